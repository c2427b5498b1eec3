"""Minor units of ISO 4217 list one, as the package iso4217 carries the published list, for the tests of `price`.

Run from this folder: python3 currencies.py
"""

import json

import iso4217

units = {c.code: c.exponent for c in iso4217.Currency if c.exponent is not None}
with open("currencies_reference.json", "w") as file:
    json.dump({"published": str(iso4217.__published__), "package": "iso4217 1.16.20260101", "minor_units": units}, file, sort_keys=True)
    file.write("\n")
