"""Independent reference values for pendulum, hoisting, travel residual, shapers and damping.

Closed forms are set against time integration of the equations of motion or 30-digit arithmetic.

How to run it, from the root of the repository (Python 3.10 or newer; some seconds):

    python3 -m pip install numpy scipy mpmath
    python3 tests/independent/swing.py

A row "| name | printed | value | yes |" says that a number printed elsewhere is the value rounded to its digits;
everything else is a value to ten digits. docs/evidence.md says what was found.
"""
import math
import numpy as np
import mpmath as mp
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar

mp.mp.dps = 30
G = 9.80665


def show(name, *values):
    print(f"{name:<58}", *(f"{float(v):.10g}" if isinstance(v, (int, float, np.floating, mp.mpf)) else v for v in values))


def check(name, printed, value):
    """Compare with a printed number to its last digit."""
    places = len(printed.split(".")[1]) if "." in printed else 0
    value = float(value)
    ok = abs(round(value, places) - float(printed)) < 0.5 * 10.0 ** -places
    print(f'| {name} | {printed} | {value:.10g} | {"yes" if ok else "NO"} |')


def head(title):
    print(f"\n## {title}")


def run(f, t0, t1, y0, **kw):
    return solve_ivp(f, (t0, t1), y0, method="DOP853", rtol=1e-13, atol=1e-15, **kw)


head("Period")


def ratio(deg):
    """T/T0 by the arithmetic-geometric mean."""
    return 1 / mp.agm(1, mp.cos(mp.radians(deg) / 2))


def ratio_time(deg):
    """T/T0 by integrating x'' = -sin x from the turning point to the first zero crossing (a quarter period)."""
    e = lambda t, y: y[0]
    e.terminal = True
    s = run(lambda t, y: [y[1], -math.sin(y[0])], 0, 10, [math.radians(deg), 0], events=e)
    return s.t_events[0][0] * 4 / (2 * math.pi)


for deg, p in ((5, "1.000476"), (10, "1.001907"), (15, "1.004301"), (20, "1.007669"), (30, "1.017409"), (45, "1.039973"),
               (60, "1.073182"), (90, "1.180341"), (120, "1.372881")):
    check(f"T/T0 {deg} deg", p, ratio(deg))
    show("   by time integration", ratio_time(deg))
T1 = 2 * mp.pi * mp.sqrt(1 / mp.mpf(G))
for deg, p in ((0, "2.006409"), (10, "2.010236"), (30, "2.041338"), (90, "2.368246")):
    check(f"T, L=1, {deg} deg", p, T1 * ratio(deg))
for share, p in ((0.01, "0.400164"), (0.1, "1.269330")):
    check(f"amplitude where (T-T0)/T = {share}", p, mp.findroot(lambda x: 1 - mp.agm(1, mp.cos(x / 2)) - share, float(p)))
for L, p in ((0.1, "0.6345"), (0.2, "0.8973"), (0.3, "1.0990"), (0.4, "1.2690"), (0.5, "1.4187"), (0.6, "1.5542"), (0.8, "1.7946"), (1.0, "2.0064")):
    check(f"T0, L={L}", p, T1 * mp.sqrt(L))

head("Hoisting: L th'' + 2 L' th' + g sin th = 0 or its linear form")


def hoist_time(L0, L1, v, th0, w0=0.0, linear=True):
    s = (lambda x: x) if linear else math.sin
    r = run(lambda t, y: [y[1], -(2 * v * y[1] + G * s(y[0])) / (L0 + v * t)], 0, (L1 - L0) / v, [th0, w0])
    return r.y[0, -1], r.y[1, -1]


def hoist_bessel(L0, L1, v, th0, w0=0.0):
    """th = [A J1(u) + B Y1(u)]/u, u = 2 sqrt(g L)/|v|; du/dt = 2 g v/(v^2 u)."""
    L0, L1, v, th0, w0, g = map(mp.mpf, map(str, (L0, L1, v, th0, w0, G)))
    u = lambda L: 2 * mp.sqrt(g * L) / abs(v)
    du = lambda x: 2 * g * v / (v * v * x)
    f = lambda x: (mp.besselj(1, x) / x, mp.bessely(1, x) / x)
    d = lambda x: (-mp.besselj(2, x) / x, -mp.bessely(2, x) / x)
    a, b = u(L0), u(L1)
    (j, y), (jd, yd) = f(a), d(a)
    A, B = mp.lu_solve(mp.matrix([[j, y], [jd, yd]]), mp.matrix([th0, w0 / du(a)]))
    (j, y), (jd, yd) = f(b), d(b)
    return a, b, A * j + B * y, (A * jd + B * yd) * du(b)


for L0, L1, v, th0, printed in ((0.6, 0.2, -0.05, 0.1, ("97.0277", "56.0190", "-0.224276", "0.244788", "0.226984", "0.227951")),
                                (0.6, 0.2, -0.10, 0.1, ("48.5139", "28.0095", "-0.024879", "-1.596259", "0.229313", "0.227951")),
                                (0.6, 0.2, -0.20, 0.1, None), (0.2, 0.6, 0.10, 0.1, None), (0.6, 0.2, -0.10, 5e-4, None)):
    u0, u1, th, w = hoist_bessel(L0, L1, v, th0)
    env = mp.sqrt(th**2 + w**2 * L1 / G)
    vals = (u0, u1, th, w, env, th0 * (L0 / L1) ** 0.75)
    name = f"{L0}->{L1} v={v} th0={th0}"
    if printed:
        for n, p, x in zip(("u0", "u1", "th end", "th' end", "envelope", "adiabatic"), printed, vals):
            check(f"{name} {n}", p, x)
    else:
        show(f"{name}: u0 u1 th th' env adiabatic", *vals)
    show("   linear, time integration: th, th'", *hoist_time(L0, L1, v, th0))
    tn, wn = hoist_time(L0, L1, v, th0, linear=False)
    show("   full sine, time integration: th, th', env", tn, wn, math.sqrt(tn**2 + wn**2 * L1 / G))
check("full sine, row 2, th end", "-0.018052", hoist_time(0.6, 0.2, -0.1, 0.1, linear=False)[0])
check("angle ratio .6->.2", "2.27951", 3**0.75)
check("travel ratio .6->.2", "0.75984", 3**-0.25)
show("with a starting rate: .6->.2 v=-.1 th0=.05 th'0=.3: th th'", *hoist_bessel(0.6, 0.2, -0.1, 0.05, 0.3)[2:])
show("   time integration", *hoist_time(0.6, 0.2, -0.1, 0.05, 0.3))

head("Travel profile residual (linear, undamped)")


def residual_time(L, pieces, zeta=0.0):
    """Remaining amplitude after pieces of (duration, acceleration at start, jerk)."""
    w = math.sqrt(G / L)
    y = [0.0, 0.0]
    for d, a0, j in pieces:
        if d > 0:
            y = run(lambda t, y: [y[1], -w * w * y[0] - 2 * zeta * w * y[1] - (a0 + j * t) / L], 0, d, y).y[:, -1]
    return math.hypot(y[0], (y[1] + zeta * w * y[0]) / (w * math.sqrt(1 - zeta**2)))


def trapezoid(a, ta, tc):
    return [(ta, a, 0), (tc, 0, 0), (ta, -a, 0)]


def residual(L, a, ta, tc):
    w = math.sqrt(G / L)
    return 4 * a / G * abs(math.sin(w * ta / 2) * math.sin(w * (ta + tc) / 2))


for L, a, ta, tc, p in ((0.4, 0.5, 0.4, 1.0, "0.054357"), (0.4, 1.0, 0.3, 0.7, "0.170406")):
    check(f"L={L} a={a} ta={ta} tc={tc}", p, residual_time(L, trapezoid(a, ta, tc)))
    show("   closed form", residual(L, a, ta, tc))
x = residual(0.4, 0.5, 0.4, 1.0)
check("  in degrees", "3.114", math.degrees(x))
check("  in mm", "21.74", x * 400)
check("steady lean, a=.5", "2.919", math.degrees(math.atan(0.5 / G)))
check("worst during ramp 2a/g, deg", "5.84", math.degrees(2 * 0.5 / G))
T = 2 * math.pi * math.sqrt(0.4 / G)
show("zeros, L=.4: ta = T; ta + tc = T (time integration)", residual_time(0.4, trapezoid(0.5, T, 0.6)), residual_time(0.4, trapezoid(0.5, 0.4, T - 0.4)))
show("triangle ta=.3 tc=0 a=1 L=.4: closed, time", residual(0.4, 1, 0.3, 0), residual_time(0.4, trapezoid(1, 0.3, 0)))
show("damped zeta=.01: L=.4 a=.5 ta=.4 tc=1 (at the stop)", residual_time(0.4, trapezoid(0.5, 0.4, 1.0), 0.01))


def s_curve(a, j, v, D):
    tj, flat = a / j, v / a - a / j
    up = [(tj, 0, j), (flat, a, 0), (tj, a, -j)]
    return up + [(D / v - v / a - a / j, 0, 0)] + [(d, -x, -k) for d, x, k in up]


def s_residual(L, a, j, v, D):
    w = math.sqrt(G / L)
    h = w * a / j / 2
    return 4 * a / G * abs(math.sin(w * v / a / 2) * math.sin(w * D / v / 2) * math.sin(h) / h)


for L in (0.4, 0.2):
    show(f"S-curve a=1 j=10 v=.25 D=.5 L={L}: closed, time", s_residual(L, 1, 10, 0.25, 0.5), residual_time(L, s_curve(1, 10, 0.25, 0.5)))
Ls = np.linspace(0.2, 0.6, 100001)
r = np.array([residual(L, 0.5, 0.4, 1.0) for L in Ls])
i = int(r.argmax())
o = minimize_scalar(lambda L: -residual(L, 0.5, 0.4, 1.0), bounds=(Ls[i - 1], Ls[i + 1]), method="bounded", options=dict(xatol=1e-12))
show("a=.5 ta=.4 tc=1, L in [.2,.6]: greatest at L, value; at the ends", o.x, -o.fun, r[0], r[-1])
head("Shapers")


def shaper(kind, zeta):
    K = math.exp(-zeta * math.pi / math.sqrt(1 - zeta**2))
    n = {"ZV": 1, "ZVD": 2, "ZVDD": 3}[kind]
    A = np.array([math.comb(n, i) * K**i for i in range(n + 1)]) / (1 + K) ** n
    return A, np.arange(n + 1) * math.pi / math.sqrt(1 - zeta**2)  # times for design frequency 1


def shaper_residual(kind, zeta, w):
    """Ring each impulse through the true oscillator and compare at the last impulse with one unit impulse at that moment."""
    A, t = shaper(kind, zeta)
    wd = w * math.sqrt(1 - zeta**2)
    y = np.zeros(2)
    for i, a in enumerate(A):
        if i:
            d = t[i] - t[i - 1]
            M = np.array([[-0.0, 1.0], [-w * w, -2 * zeta * w]])
            ev, V = np.linalg.eig(M)
            y = (V @ np.diag(np.exp(ev * d)) @ np.linalg.inv(V) @ y).real
        y = y + [0, a]
    return math.hypot(y[0] * wd, y[1] + zeta * w * y[0])


def band(kind, zeta, level=0.05):
    f = lambda w: shaper_residual(kind, zeta, w) - level
    lo = brentq(f, 0.5, 1 - 1e-9, xtol=1e-14)
    hi = brentq(f, 1 + 1e-9, 1.49, xtol=1e-14)
    return lo, hi


for zeta, kind, amps, p10, m10, p20, m20, lo, hi, width in (
        (0.0, "ZV", (".5", ".5"), "0.1564", "0.1564", "0.3090", "0.3090", ".9682", "1.0318", "0.0637"),
        (0.0, "ZVD", (".25", ".5", ".25"), "0.0245", "0.0245", "0.0955", "0.0955", ".8564", "1.1436", "0.2871"),
        (0.0, "ZVDD", (".125", ".375", ".375", ".125"), "0.0038", "0.0038", "0.0295", "0.0295", ".7598", "1.2402", "0.4804"),
        (0.1, "ZV", (".57829", ".42171"), "0.1305", "0.1347", ".2538", ".2704", None, None, ".0751"),
        (0.1, "ZVD", (".33441", ".48774", ".17784"), "0.0170", "0.0181", ".0644", ".0731", None, None, ".3402")):
    A, _ = shaper(kind, zeta)
    name = f"zeta={zeta} {kind}"
    for i, (p, x) in enumerate(zip(amps, A)):
        check(f"{name} A{i + 1}", p, x)
    for w, p in ((1.1, p10), (0.9, m10), (1.2, p20), (0.8, m20)):
        check(f"{name} V at {w}", p, shaper_residual(kind, zeta, w))
    b = band(kind, zeta)
    for n, p, x in (("band from", lo, b[0]), ("band to", hi, b[1]), ("band width", width, b[1] - b[0])):
        check(f"{name} {n}", p, x) if p else show(f"{name} {n}", x)
check("K at zeta=.1", ".72925", math.exp(-0.1 * math.pi / math.sqrt(0.99)))
show("zeta=.1 ZVDD V at 1.1, .9; amplitudes", shaper_residual("ZVDD", 0.1, 1.1), shaper_residual("ZVDD", 0.1, 0.9), *shaper("ZVDD", 0.1)[0])
show("zeta=.01 ZV, ZVD V at 1.1", shaper_residual("ZV", 0.01, 1.1), shaper_residual("ZVD", 0.01, 1.1))
show("length +10 %: exact r and V of ZV, ZVD at zeta=0", 1 / math.sqrt(1.1), shaper_residual("ZV", 0, 1 / math.sqrt(1.1)), shaper_residual("ZVD", 0, 1 / math.sqrt(1.1)))

head("Damping")


def decrement_time(zeta):
    e = lambda t, y: y[1]
    e.direction = -1
    s = run(lambda t, y: [y[1], -y[0] - 2 * zeta * y[1]], 0, 20, [0, 1], events=e)
    p = [y[0] for y in s.y_events[0] if y[0] > 0]
    return math.log(p[0] / p[1])


check("decrement, zeta=.01", "0.0628350", decrement_time(0.01))
d = math.log(2) / 10
check("decrement, halves in 10", ".0693147", d)
check("zeta, halves in 10", ".0110311", brentq(lambda z: 2 * math.pi * z / math.sqrt(1 - z * z) - d, 1e-6, 0.5, xtol=1e-15))
for n in (1, 3, 30):
    show(f"zeta, halves in {n}; 0.110/n", math.log(2) / n / math.hypot(2 * math.pi, math.log(2) / n), 0.110 / n)

head("Line as a unit vector, three dimensions")


def cartesian(L0, v, push, tilt, t_end):
    """Position of the load from its pivot with the line force as multiplier keeping |r| = L(t); returns the direction and tension per kg."""
    def parts(t, y):
        r, u = y[:3], y[3:]
        L = L0 + v * t
        outside = np.array([-push(t), 0, -G])
        lam = (v * v - u @ u - r @ outside) / (L * L)
        return outside + lam * r, -lam * L
    def f(t, y):
        return np.r_[y[3:], parts(t, y)[0]]
    n = np.array([0, math.sin(tilt), -math.cos(tilt)])
    y, t = np.r_[L0 * n, v * n], 0.0
    for stop in (0.5, t_end):
        y = run(f, t, stop, y).y[:, -1]
        t = stop
    return y[:3] / (L0 + v * t_end), parts(t, y)[1]


def unit_vector(L0, v, push, tilt, t_end):
    """n'' = [(I - n nT)(-g z - q'') - 2 L' n']/L - |n'|^2 n."""
    def f(t, y):
        n, w = y[:3], y[3:]
        L = L0 + v * t
        s = np.array([-push(t), 0, -G])
        return np.r_[w, (s - n * (n @ s) - 2 * v * w) / L - (w @ w) * n]
    y, t = np.array([0, math.sin(tilt), -math.cos(tilt), 0, 0, 0]), 0.0
    for stop in (0.5, t_end):
        y = run(f, t, stop, y).y[:, -1]
        t = stop
    n, w = y[:3], y[3:]
    return n, -n @ np.array([push(t), 0, G]) + (L0 + v * t_end) * (w @ w)


push = lambda t: 0.5 if t < 0.5 else 0.0
for label, f in (("cartesian with multiplier", cartesian), ("unit vector", unit_vector)):
    n, T_ = f(0.6, -0.1, push, 0.1, 3.0)
    show(f"L .6 v -.1, push x .5 m/s2 for .5 s, tilt y .1 rad, t=3: {label}", *n, T_)
e = lambda t, y: G * math.cos(y[0]) + 0.5 * y[1] ** 2
e.terminal = True
s = run(lambda t, y: [y[1], -G / 0.5 * math.sin(y[0])], 0, 5, [0, math.sqrt(3.5 * G / 0.5)], events=e)
show("slack, L=.5, bottom speed^2 = 3.5 g L: angle deg, time s, rate", math.degrees(s.y_events[0][0][0]), s.t_events[0][0], s.y_events[0][0][1])
th = brentq(lambda x: math.tan(x) - 1.2**2 * math.sin(x), 0.1, 1.5)
show("conical: w = 1.2 sqrt(g/L): tilt deg, tension/(m g)", math.degrees(th), 1 / math.cos(th))
