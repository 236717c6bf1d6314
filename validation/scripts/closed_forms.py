#!/usr/bin/env python3
"""Works out the exact values that the analytic cases are held against, and writes them into their reference.csv.

Independent of the program: formulas are written anew here, roots are found by bracketing, differential equations by an
implicit Runge-Kutta method, Bessel functions by scipy (Debian package python3-scipy). Standard air: mu = 1.81e-5 Pa s,
rho = 1.204 kg/m3. Run from the folder that holds the cases:

    python3 scripts/closed_forms.py .
"""
import math
import pathlib
import sys

import numpy as np
import scipy
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq
from scipy.special import i0, i1, k0, k1

MU, RHO = 1.81e-5, 1.204
G = 9.80665
CFM = 4.719474432e-4
INH2O = 249.08891
T = 2e-8 * 0.1 / MU


def case_0001():
    """mu q/(2 pi k h) ln(R/r)"""
    drop = lambda r: MU * 0.02 / (2 * math.pi * 1e-7 * 0.1) * math.log(5 / r)
    return "r,vacuum", [(r, drop(r)) for r in (0.15, 0.5, 1, 2, 3, 4)]


def case_0002():
    """mu q/(2 pi k h) ln(R/r) + beta rho q^2/(4 pi^2 h^2) (1/r - 1/R)"""
    def drop(q, r, k=1e-7, beta=1000, h=0.1, outer=5):
        a = q / (2 * math.pi * h)
        return MU / k * a * math.log(outer / r) + beta * RHO * a * a * (1 / r - 1 / outer)
    return "row,flow,r,vacuum", [(f"{q}-{r}", q, r, drop(q, r)) for q in (0.02, 0.05) for r in (0.15, 0.5, 1, 2)]


def disc(r, q, lam, rw, outer):
    a, b, c = r / lam, outer / lam, rw / lam
    return q / (2 * math.pi * T) * (k0(a) * i1(b) + i0(a) * k1(b)) / (c * (k1(c) * i1(b) - i1(c) * k1(b)))


def case_0003():
    rows = []
    for g in (1e-7, 1e-6, 1e-5):
        for r in (0.15, 0.5, 1, 2, 3, 5):
            rows.append((f"{g:.0e}-{r}", f"{g:.0e}", r, disc(r, 0.01, math.sqrt(T / g), 0.15, 6)))
    return "row,leakance,r,vacuum", rows


def images(x, y, lam, wells, lx=10, ly=8):
    total = 0
    for wx, wy, q in wells:
        for m in range(-14, 15):
            for n in range(-14, 15):
                for sx in (-1, 1):
                    for sy in (-1, 1):
                        d = math.hypot(x - (2 * lx * m + sx * wx), y - (2 * ly * n + sy * wy)) / lam
                        if d < 60:
                            total += q * k0(d)
    return total / (2 * math.pi * T)


PLACES = ((4.5, 3), (7.5, 3), (2.5, 6), (5, 4), (9.5, 7.5), (0.5, 0.5))


def case_0004():
    rows = []
    for lam in (1.5, 3, 6):
        for x, y in PLACES:
            rows.append((f"{lam}-{x};{y}", lam, f"{x};{y}", images(x, y, lam, [(2.5, 3, 0.01)])))
    return "row,lambda,place,vacuum", rows


def case_0005():
    """p = push (1 - cosh(x/lam)/cosh(L/2 lam)), x from the middle; flow into a drain T push tanh(L/2 lam)/lam"""
    rows = []
    for lam in (4, 2, 1):
        for x in (1, 2, 3, 4):
            rows.append((f"{lam}-{x}", lam, x, 100 * (1 - math.cosh((x - 4) / lam) / math.cosh(4 / lam))))
        rows.append((f"{lam}-flow", lam, "", T * 100 * math.tanh(4 / lam) / lam))
    return "row,lambda,x,value", rows


def conformal_radius_of_square(side):
    """Radius at the middle: side / (2 times the integral that maps the unit circle to the square), Schwarz-Christoffel"""
    half = quad(lambda t: 1 / math.sqrt(1 + t ** 4), 0, 1)[0]  # from the middle to the middle of a side
    return side / 2 / half


def case_0006():
    """Flow between a small circle and the square's edge: 2 pi T p/ln(conformal radius/r), exact to (r/side)^4"""
    rows = []
    for r in (0.1, 0.15, 0.3):
        rows.append((r, 2 * math.pi * T * 250 / math.log(conformal_radius_of_square(6) / r)))
    return "r,flow", rows


def case_0007():
    lam = math.sqrt(T / 1e-6)
    return "r,flow", [(r, 250 / disc(r, 1, lam, r, 6)) for r in (0.02, 0.05, 0.1, 0.15, 0.3, 0.5)]


def shooting(k, beta, g, rw, outer=6, h=0.1, suction=250):
    radii = [5, 4, 3, 2, 1, 0.5]

    def inward(rim, places):
        def rhs(s, y):
            r = outer - s
            v = y[1] / (2 * math.pi * r * h)
            return [MU / k * v + beta * RHO * v * v, 2 * math.pi * r * g * y[0]]
        return solve_ivp(rhs, (0, outer - rw), [rim, 0], method="Radau", rtol=1e-11, atol=1e-12, t_eval=places)

    rim = brentq(lambda p: inward(p, [outer - rw]).y[0][-1] - suction, 1e-3, suction, xtol=1e-11)
    s = inward(rim, [outer - r for r in radii] + [outer - rw])
    return s.y[1][-1], dict(zip(radii, s.y[0]))


def case_0008():
    rows = []
    for name, k, beta, g, rw in (("stone", 1e-7, 1000, 2e-6, 0.15), ("coarse", 3e-7, 1500, 5e-6, 0.2), ("small", 1e-7, 3000, 2e-6, 0.1)):
        q, p = shooting(k, beta, g, rw)
        rows.append((f"{name}-flow", name, "", q))
        for r in (0.5, 1, 2, 3, 5):
            rows.append((f"{name}-{r}", name, r, p[r]))
    return "row,fill,r,value", rows


def case_0009():
    """Strip of conductance T W/L between 100 Pa and a leak C p^n to the room"""
    rows = []
    for n in (0.5, 0.65, 1):
        p = brentq(lambda p: T * 1 / 9 * (100 - p) - 1.5e-4 * p ** n, 0.01, 100, xtol=1e-13)
        rows.append((n, 1.5e-4 * p ** n, p))
    return "n,flow,pressure", rows


def case_0010():
    whole = 3.03 / 2e-8 + 3.04 / 2e-10 + 2.93 / 2e-8
    flow = 100 / whole * 0.1 / MU
    first = 100 - flow * MU / 0.1 * 2 / 2e-8
    middle = 100 - flow * MU / 0.1 * (3.03 / 2e-8 + 1.47 / 2e-10)
    return "row,value", [("flow", flow), ("p2", first), ("p4.5", middle)]


def case_0011():
    rows = []
    for x, w in ((4.0, 0.4), (4.03, 0.4), (4.03, 0.06), (4.05, 0.02)):
        rows.append((f"{x}-{w}", x, w, 100 / ((9 - w) / 2e-8 + w / 1e-11) * 0.1 / MU))
    return "row,x,width,flow", rows


def case_0012():
    """A thin diaphragm with a gap s in the middle of a channel of width W adds the length (2 W/pi) ln(1/sin(pi s/2W))"""
    rows = []
    for s in (1, 2):
        added = 2 * 4 / math.pi * math.log(1 / math.sin(math.pi * s / (2 * 4)))
        rows.append((s, T * 4 * 100 / (10 + added), added))
    return "gap,flow,added_length", rows


def case_0013():
    """A right-angled bend between two legs of one width counts as 1 - 2 ln 2/pi squares"""
    corner = 1 - 2 * math.log(2) / math.pi
    return "row,value", [("flow", T * 100 / (3 / 2 + 3 / 2 + corner)), ("corner", corner)]


def case_0014():
    rows = []
    for x, y in PLACES[:4]:
        rows.append((f"{x};{y}", images(x, y, 3, [(2.5, 3, 0.01), (8, 6, 0.004)])))
    return "place,vacuum", rows


def case_0016():
    def flow(p, length=10, width=8, h=0.1, k=1e-7, beta=1000):
        a, b = MU / k, beta * RHO
        v = (-a + math.sqrt(a * a + 4 * b * p / length)) / (2 * b)
        return v * width * h
    return "push,flow", [(p, flow(p)) for p in (10, 120.6, 500)]


def orifice(dp, d, cd=0.61):
    return cd * math.pi * d * d / 4 * math.sqrt(2 * dp / RHO)


def case_0020():
    return "row,d,dp,flow", [(f"{d}-{p}", d, p, orifice(p, d)) for d, p in ((0.025, 10), (0.05, 100), (0.1, 50))]


def crack(dp, w, z=0.1016, bends=0):
    a, b = 12 * MU * z / w ** 3, RHO * (1.5 + bends) / (2 * w * w)
    return (-a + math.sqrt(a * a + 4 * b * dp)) / (2 * b)


def case_0021():
    return "width,open,sealed", [(w, 14 * crack(10, w), 14 * 0.25 * crack(10, w)) for w in (0.0005, 0.001, 0.002)]


def case_0022():
    joint, inside, outside = 1e-4 * 4, 2e-5 * 8, 1e-5 * 8
    core = (joint * -50 + outside * 5) / (joint + inside + outside)
    return "row,value", [("inside", -core * inside), ("outside", (5 - core) * outside), ("joint", joint * (core + 50))]


def case_0023():
    """Tile friction and lid in series, both quadratic: p = (f L rho/(2 D A^2) + rho/(2 Cd^2 a^2)) q^2"""
    d, n, length = 0.102, 0.017, 14
    area, f = math.pi * d * d / 4, 8 * G * n * n / (d / 4) ** (1 / 3)
    tile, lid = f * length * RHO / (2 * d * area ** 2), RHO / (2 * (0.61 * 0.002) ** 2)
    q = math.sqrt(250 / (tile + lid))
    return "row,value", [("flow", q), ("sump", lid * q * q)]


def case_0024():
    """Even inflow: f L rho V^2/(6 D), f = 8 g n^2/(D/4)^(1/3), over the tile's length"""
    d, n, length, q = 0.102, 0.017, 20, 40 * CFM
    f = 8 * G * n * n / (d / 4) ** (1 / 3)
    v = q / (math.pi * d * d / 4)
    return "row,value", [("friction", f * length / (3 * d) * RHO * v * v / 2)]


def case_0025():
    """Leaky line: p = p0 cosh((L - s)/Lc)/cosh(L/Lc), Lc^2 = 1/(a G); a = 128 mu/(pi D^4), G = 2 T/width each side"""
    d, length = 0.01, 20
    a = 128 * MU / (math.pi * d ** 4)
    leak = 2 * (1e-11 * 0.1 / MU) / 1.0
    lc = 1 / math.sqrt(a * leak)
    rows = [(s, 20 * math.cosh((length - s) / lc) / math.cosh(length / lc)) for s in (5, 10, 15, 20)]
    rows.append(("flow", 20 * leak * lc * math.tanh(length / lc)))
    return "s,value", rows


def colebrook(re, e):
    return 1 / brentq(lambda x: x + 2 * math.log10(e / 3.7 + 2.51 * x / re), 1, 20, xtol=1e-14) ** 2


def pipe_loss(q, d, length, ells=0, k=0, eps=1.5e-6, mu=MU, rho=RHO):
    v = q / (math.pi * d * d / 4)
    re = rho * v * d / mu
    if re <= 2300:
        f = 64 / re
    elif re >= 4000:
        f = colebrook(re, eps / d)
    else:
        f = 64 / 2300 + (colebrook(4000, eps / d) - 64 / 2300) * (re - 2300) / 1700
    return (f * (length + 30 * d * ells) / d + k) * rho * v * v / 2


def case_0026():
    lam = math.sqrt(T / 1e-6)
    layer = 1 / disc(0.15, 1, lam, 0.15, 6)
    points = [(i * 5e-3, 350 * (1 - (i * 5e-3 / 0.09) ** 2)) for i in range(19)]
    rise = lambda q: float(np.interp(q, [p[0] for p in points], [p[1] for p in points]))
    q = brentq(lambda q: rise(q) - pipe_loss(q, 0.10226, 10, 4, 1.5) - q / layer, 1e-6, 0.09, xtol=1e-15)
    return "row,value", [("flow", q), ("pit", q / layer)]


def case_0027():
    """A layer of one pressure between soil g A (po - p) and a hole Cd A sqrt(2 p/rho)"""
    area, cda = 4 * 3 - math.pi * (0.05 ** 2 + 0.15 ** 2), 0.61 * 2e-5
    p = brentq(lambda p: 1e-6 * area * (3 - p) - cda * math.sqrt(2 * p / RHO), 1e-6, 3, xtol=1e-15)
    return "row,value", [("pressure", p)]


def case_0030():
    pairs = ((4000, 0), (1e4, 0), (1e4, 1e-4), (4e4, 0), (4e4, 4.5e-4), (1e5, 1e-4), (1e6, 1e-4), (1e6, 1e-2), (1e7, 0.05))
    return "row,Re,e,f", [(f"{re:.0e}-{e}", re, e, colebrook(re, e)) for re, e in pairs]


def case_0032():
    rows = []
    for name, inches in (("3 in", 3.068), ("4 in", 4.026), ("6 in", 6.065)):
        for cfm in (20, 40, 80, 100, 120, 200):
            rows.append((f"{name} {cfm} cfm", inches, cfm, pipe_loss(cfm * CFM, inches * 0.0254, 30.48) / INH2O))
    return "row,d_in,cfm,inwc_per_100ft", rows


def case_0033():
    """Laminar, between, and turbulent, in a pipe of 0.05 m and 10 m length with eps 0.1 mm"""
    rows = []
    for re in (100, 2299, 2301, 3000, 3999, 4001, 2e4):
        q = re * MU / RHO * math.pi * 0.05 / 4
        rows.append((f"Re {re:g}", q, pipe_loss(q, 0.05, 10, eps=1e-4)))
    return "row,flow,loss", rows


def case_0040():
    rows = []
    for d in (0.01, 0.05, 0.1):
        for dp in (4, 10, 50, 100):
            rows.append((f"orifice {1000 * d:g} mm {dp} Pa", d, dp, orifice(dp, d)))
    return "row,d,dp,flow", rows


def behind(own, r, dp):
    """Flow of a law q = own(drop) with a linear resistance r in series"""
    return brentq(lambda q: own(dp - r * q) - q, 0, dp / r, xtol=1e-18, rtol=1e-15)


def case_0041():
    rows = []
    for w, dp, bends in ((0.00025, 10, 0), (0.0005, 4, 0), (0.0005, 10, 0), (0.001, 4, 0), (0.001, 10, 0), (0.002, 10, 0),
                         (0.003, 10, 0), (0.002, 10, 2), (0.001, 50, 1)):
        rows.append((f"{1000 * w:g} mm {dp} Pa {bends} bends", w, dp, bends, crack(dp, w, 0.1, bends)))
    return "row,width,dp,bends,flow", rows


def case_0042():
    """Manning, V = (1.486/n) R^(2/3) S^(1/2) in feet; slope S as a loss of head, so dp = rho g S per metre"""
    rows = []
    for d, n in ((0.076, 0.016), (0.102, 0.014), (0.102, 0.017), (0.152, 0.017)):
        for cfm in (20, 80, 120):
            v = cfm * CFM / (math.pi * d * d / 4) / 0.3048
            s = (v * n / (1.486 * (d / 4 / 0.3048) ** (2 / 3))) ** 2
            rows.append((f"{1000 * d:g} mm n {n} {cfm} cfm", d, n, cfm, RHO * G * s))
    rows.append(("laminar", 0.1, 0.017, "", math.pi * 0.1 ** 4 * 1e-4 / (128 * MU * 10)))
    return "row,d,n,cfm,pa_per_m", rows


def case_0043():
    rows = []
    for name, k, beta, r1, q in (("F1a", 1e-7, 0, 0.05, 0.02), ("F1b", 1e-8, 0, 0.05, 0.02), ("F2a", 1e-7, 1000, 0.15, 0.02),
                                 ("F2b", 1e-7, 1000, 0.15, 0.05), ("F2d", 2e-8, 3000, 0.15, 0.01)):
        f = lambda r: MU / k * q / (2 * math.pi * 0.1 * r) + beta * RHO * (q / (2 * math.pi * 0.1 * r)) ** 2
        rows.append((name, k, beta, r1, q, quad(f, r1, 5, epsrel=1e-12)[0]))
    return "row,k,beta,r1,q,drop", rows


def case_0044():
    """v of e = (mu/k) v + beta rho v^2, over Darcy's k e/mu"""
    rows = []
    for k, beta, e in ((1e-7, 1000, 1), (1e-7, 1000, 20), (1e-7, 1000, 400), (2e-8, 3000, 50), (1e-9, 0, 50)):
        v = brentq(lambda v: MU / k * v + beta * RHO * v * v - e, 0, k * e / MU, xtol=1e-18, rtol=1e-15) if beta else k * e / MU
        rows.append((f"{k:g} {beta} {e}", k, beta, e, v / (k * e / MU)))
    return "row,k,beta,gradient,ratio", rows


def case_0045():
    """Ergun: dp/L = 150 mu (1-e)^2 v/(e^3 d^2) + 1.75 rho (1-e) v^2/(e^3 d); Ward: beta = 0.55/sqrt k"""
    rows = []
    for d, e in ((0.002, 0.4), (0.005, 0.4), (0.01, 0.4), (0.02, 0.38), (0.02, 0.45), (0.03, 0.4)):
        k = e ** 3 * d * d / (150 * (1 - e) ** 2)
        rows.append((f"{1000 * d:g} mm {e}", d, e, k, 1.75 * (1 - e) / (e ** 3 * d), 0.55 / math.sqrt(k)))
    return "row,d,porosity,k,beta,ward", rows


def case_0048():
    """Flow where the fan's rise less the pipe's loss meets a pit pressure"""
    xs, ys = [0, 0.03, 0.06], [400, 300, 50]

    def rise(q):
        i = 0 if q < 0.03 else 1
        return ys[i] + (ys[i + 1] - ys[i]) / (xs[i + 1] - xs[i]) * (q - xs[i])
    rows = []
    for pit in (-380, -250, -100, 0):
        loss = lambda q: math.copysign(pipe_loss(abs(q), 0.10226, 9.144, 4, 1.5), q) if q else 0
        q = brentq(lambda q: rise(q) - loss(q) + pit, -0.02, 0.08, xtol=1e-17)
        rows.append((f"{pit} Pa", pit, q))
    return "row,pit,flow", rows


def case_0049():
    """With a resistance in series, and below 1 mPa where a root goes over into a line"""
    cda = 0.61 * 1e-3
    root = lambda d: cda * math.sqrt(2 * d / RHO) if d > 1e-3 else cda * math.sqrt(2 * 1e-3 / RHO) * d / 1e-3
    power = lambda d: 2e-3 * d ** 0.65 if d > 1e-3 else 2e-3 * 1e-3 ** -0.35 * d
    rows = []
    for dp in (50, 1, 1e-4):
        rows.append((f"orifice {dp:g} Pa", dp, 1e4, behind(root, 1e4, dp)))
    for dp in (50, 1, 1e-4):
        rows.append((f"power law {dp:g} Pa", dp, 1e4, behind(power, 1e4, dp)))
    rows.append(("crack 10 Pa", 10, 1e4, behind(lambda d: crack(d, 0.001, 0.1), 1e4, 10)))
    for dp in (50, 2):
        drop = lambda q: 1e4 * q + 5e5 * q * q + (q / 2e-3) ** (1 / 0.65)
        rows.append((f"in series {dp} Pa", dp, "", brentq(lambda q: drop(q) - dp, 0, 1, xtol=1e-18, rtol=1e-15)))
    rows.append(("conductance 7 Pa", 7, 0, 7 * 3e-4))
    rows.append(("root alone 4 Pa", 4, 0, math.sqrt(4 / 5e5)))
    rows.append(("root alone 1e-4 Pa", 1e-4, 0, 1e-4 / math.sqrt(5e5 * 1e-3)))
    return "row,dp,series,flow", rows


def main(folder):
    for name, function in sorted(globals().items()):
        if name.startswith("case_"):
            for place in pathlib.Path(folder).glob(name[5:] + "-*"):
                head, rows = function()
                remark = f"# {(function.__doc__ or 'see scripts/closed_forms.py').strip()}\n# scripts/closed_forms.py, scipy {scipy.__version__}\n"
                text = "\n".join(",".join(f"{c:.10g}" if isinstance(c, float) else str(c) for c in row) for row in rows)
                (place / "reference.csv").write_text(remark + head + "\n" + text + "\n")
                print(place.name)


if __name__ == "__main__":
    main(sys.argv[1])
