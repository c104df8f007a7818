"""Compares what an import set aside with the rows that were made bad: compare_bad.py REPORT.json EXPECTED.csv"""
import csv
import json
import sys

with open(sys.argv[1], encoding="utf-8") as file:
    report = json.load(file)
with open(sys.argv[2], encoding="utf-8", newline="") as file:
    expected = {(int(r["row"]), int(r["line"]), r["column"], r["kind"], r["value"]) for r in csv.DictReader(file)}
found = {(p["row"], p["line"], p["column"], p["kind"], p["value"]) for p in report["problems"] if not p["kept"]}
print("Rows: %d; kept: %d; set aside: %d; made bad: %d." % (report["rows"], report["kept"], report["set_aside"], len(expected)))
if found != expected or report["kept"] != report["rows"] - len(expected):
    print("Not found: %d; not expected: %d." % (len(expected - found), len(found - expected)))
    sys.exit(1)
print("Row, line, column, kind and value agree for every one.")
