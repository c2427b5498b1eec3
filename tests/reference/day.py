"""Holds what a running shop sends against general-purpose parsers: the calendar against PyPI `icalendar`, the
tables against Python's `csv`, the archive against `zipfile` and `json`.

    python3 tests/reference/day.py http://127.0.0.1:8765
"""
import csv
import io
import json
import sys
import urllib.request
import zipfile
from datetime import date, datetime, timezone

from icalendar import Calendar


def get(base: str, path: str) -> bytes:
    with urllib.request.urlopen(base + path) as answer:
        return answer.read()


def check_calendar(base: str, jobs: list) -> str:
    raw = get(base, "/api/calendar.ics")
    lines = raw.split(b"\r\n")
    assert all(len(line) <= 75 and b"\n" not in line and b"\r" not in line for line in lines), "RFC 5545 3.1"
    events = {str(event["UID"]).split("@")[0]: event for event in Calendar.from_ical(raw).walk("VEVENT")}
    promised = {job["id"]: job for job in jobs if job["promised"] and job["stage"] != "handed_over"}
    assert events.keys() == promised.keys(), (events.keys(), promised.keys())
    for key, job in promised.items():
        event, start = events[key], events[key].decoded("DTSTART")
        assert isinstance(event.decoded("DTSTAMP"), datetime)
        if job["promised_time"]:
            local = datetime.fromisoformat(f"{job['promised']}T{job['promised_time']}").astimezone(timezone.utc)
            assert start == local, (start, local)
        else:
            assert type(start) is date and start.isoformat() == job["promised"], start
        assert str(event.get("LOCATION", "")) == job["place"], event.get("LOCATION")
        assert job["plate"] in str(event["SUMMARY"]) and job["customer_name"] in str(event["SUMMARY"])
        assert job["number"] in str(event["DESCRIPTION"])
        notes = json.loads(get(base, f"/api/jobs/{key}"))["notes"].replace("\r\n", "\n")
        assert str(event["DESCRIPTION"]).endswith(notes), event["DESCRIPTION"]
    return f"{len(promised)} events, {sum(line.startswith(b' ') for line in lines)} folded lines"


def check_tables(base: str, jobs: list) -> str:
    sizes = []
    for name in ["jobs", "dents", "lines"]:
        rows = list(csv.reader(io.StringIO(get(base, f"/api/tables/{name}.csv").decode(), newline=""), strict=True))
        assert all(len(row) == len(rows[0]) for row in rows), name
        sizes.append(len(rows) - 1)
        if name == "jobs":
            found = {row[1]: dict(zip(rows[0], row)) for row in rows[1:]}
            assert found.keys() == {job["id"] for job in jobs}
            for job in jobs:
                assert found[job["id"]]["notes"] == json.loads(get(base, f"/api/jobs/{job['id']}"))["notes"]
    return f"{sizes[0]} jobs, {sizes[1]} dent lines, {sizes[2]} quote lines"


def check_archive(base: str, jobs: list) -> str:
    with zipfile.ZipFile(io.BytesIO(get(base, "/api/archive.zip"))) as packed:
        assert packed.testzip() is None
        record = json.loads(packed.read("dentwright.json"))
        assert {row["id"] for row in record["tables"]["job"]} == {job["id"] for job in jobs}
        return f"{len(packed.namelist()) - 1} files, {sum(map(len, record['tables'].values()))} rows"


def main() -> None:
    base = sys.argv[1]
    jobs = json.loads(get(base, "/api/jobs"))
    print("calendar:", check_calendar(base, jobs))
    print("tables:", check_tables(base, jobs))
    print("archive:", check_archive(base, jobs))


main()
