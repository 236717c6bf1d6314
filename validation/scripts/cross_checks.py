#!/usr/bin/env python3
"""Turns what the finite-element scripts printed into the reference.csv of the cross-check cases, and finds for the layer on
soil which uniform leakance the program's model needs to draw the same flow, and how far its vacuums then are off.

    python3 scripts/cross_checks.py .
"""
import math
import pathlib
import sys

from scipy.optimize import brentq
from scipy.special import i0, i1, k0, k1

HERE = pathlib.Path(__file__).parent
REMARK = "# FreeFem++ 4.11 (Debian package freefem++ 4.11+dfsg1-3), scripts/{}.edp, P2 elements on an adapted mesh\n"
MU, RW, R, H, SUCTION = 1.81e-5, 0.15, 6, 0.1, 250
T = 2e-8 * H / MU


def printed(name):
    return [line.split() for line in (HERE / (name + ".txt")).read_text().splitlines()]


def write(folder, number, script, head, rows):
    for place in pathlib.Path(folder).glob(number + "-*"):
        text = "\n".join(",".join(row) for row in rows)
        (place / "reference.csv").write_text(REMARK.format(script) + head + "\n" + text + "\n")


def disc(g, r):
    """Flow and vacuum of a leaky disc with a closed rim and 250 Pa at the pit"""
    lam = math.sqrt(T / g)
    shape = lambda x: k0(x / lam) * i1(R / lam) + i0(x / lam) * k1(R / lam)
    flow = 2 * math.pi * T * RW / lam * SUCTION * (k1(RW / lam) * i1(R / lam) - i1(RW / lam) * k1(R / lam)) / shape(RW)
    return flow, SUCTION * shape(r) / shape(RW)


def layer_on_soil(results="layer_on_soil"):
    """For each contrast: flow, leakance that draws it, and errors of the two-dimensional vacuum by radius"""
    found = {}
    for contrast, name, value in printed(results):
        found.setdefault(int(contrast), {})[name] = float(value)
    out = []
    for contrast, values in found.items():
        g = brentq(lambda g: disc(g, 1)[0] - values["flow"], 1e-12, 1e-1)
        errors = {float(k[2:-1]): disc(g, float(k[2:-1]))[1] / -v - 1 for k, v in values.items() if k.startswith("p(")}
        rule = 0.44 * 2e-8 / contrast / MU
        out.append((contrast, values, g, errors, disc(rule, 1)[0] / values["flow"] - 1))
    return out


def main(folder):
    for number, name in (("0060", "footing_doorway"), ("0061", "coarse_stone"), ("0062", "two_fills")):
        write(folder, number, name, "row,value", printed(name))
    for number, contrast in (("0063", 1000), ("0064", 100)):
        rows = [[name, value] for c, name, value in printed("layer_on_soil") if int(c) == contrast and name != "triangles"]
        write(folder, number, "layer_on_soil", "row,value", rows)
    rows = [[name, value] for c, name, value in printed("layer_on_soil_on_grade") if c == "1000" and name != "triangles"]
    write(folder, "0065", "layer_on_soil", "row,value", rows)
    limits = pathlib.Path(folder) / "../docs/limits.md"
    text = limits.read_text()
    for results, name in (("layer_on_soil", "layer on soil"), ("layer_on_soil_on_grade", "layer on soil at grade")):
        begin, end = f"<!-- {name}: begin -->\n", f"<!-- {name}: end -->"
        a, b = text.index(begin) + len(begin), text.index(end)
        text = text[:a] + table(layer_on_soil(results)) + text[b:]
    limits.write_text(text)


def table(found):
    lines = ["| layer over soil | flow [L/s] | leakance that draws it [m/s/Pa] | in parts of k_soil/mu [1/m] | "
             + " | ".join(f"{r:g} m" for r in found[0][3]) + " | flow by the rule |",
             "| ---: |" + " ---: |" * 11]
    for contrast, values, g, errors, flow_error in found:
        lines.append(f"| {contrast} | {1000 * values['flow']:.3g} | {g:.3g} | {g * MU * contrast / 2e-8:.3f} | "
                     + " | ".join(f"{100 * e:+.1f} %" for e in errors.values()) + f" | {100 * flow_error:+.0f} % |")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    main(sys.argv[1])
