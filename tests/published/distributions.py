"""Writes distributions.json: chances to 40 digits, by mpmath 1.3.0 (pip install mpmath==1.3.0).

The incomplete beta function for Student's t, the complementary error function for the normal, and
whole numbers for the hypergeometric: none of them the formula of the core.
"""
import json
from fractions import Fraction
from math import comb
from pathlib import Path

from mpmath import betainc, erfc, mp, mpf, sqrt

mp.dps = 40


def normal(z):
    return erfc(-mpf(z) / sqrt(2)) / 2


def student(t, df):
    tail = betainc(mpf(df) / 2, mpf(1) / 2, 0, mpf(df) / (df + mpf(t) ** 2), regularized=True) / 2
    return tail if t < 0 else 1 - tail


def hypergeometric(found, size, marked, drawn):
    ways = sum(comb(marked, n) * comb(size - marked, drawn - n) for n in range(found + 1))
    chance = Fraction(ways, comb(size, drawn))
    return mpf(chance.numerator) / chance.denominator


zs = [-37.5, -20, -8, -5, -3, -2.001, -2, -1.999, -1.5, -0.5, -1e-8, 0, 0.25, 1, 1.96, 2, 3, 6]
ts = [-1000, -40, -12.706, -5, -3.1, -2, -1, -0.3, -1e-6, 0, 0.5, 1.7, 2.26, 4, 30]
dfs = [0.5, 1, 1.5, 2, 3.7, 7, 9, 14, 29, 60.25, 119, 120, 500, 2999, 100000]
lots = [
    (0, 4, 2, 2), (1, 4, 2, 2), (0, 20, 3, 5), (2, 20, 18, 5), (4, 20, 18, 5), (3, 400, 65, 20),
    (0, 400, 65, 20), (19, 400, 335, 20), (12, 1000, 500, 40), (5, 3000, 90, 250),
    (90, 3000, 90, 250), (200, 5000, 4000, 250), (150, 5000, 4000, 250), (1, 100000, 3, 50000),
]
written = {
    "normal": [[z, float(normal(z))] for z in zs],
    "student": [[t, df, float(student(t, df))] for df in dfs for t in ts],
    "hypergeometric": [[*lot, float(hypergeometric(*lot))] for lot in lots],
}
lines = [f'"{name}": [\n' + ",\n".join(json.dumps(row) for row in rows) + "\n]" for name, rows in written.items()]
Path(__file__).with_suffix(".json").write_text("{" + ",\n".join(lines) + "}\n")
