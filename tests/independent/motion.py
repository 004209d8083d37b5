"""Independent reference values for motor, profile, hoist and belt formulas.

Every value is reached by a route other than the closed form it is meant to check: a search over current
phasors, a time-domain integration, a polygon hull, a linear programme, or 30-digit arithmetic.

How to run it, from the root of the repository (Python 3.10 or newer; half a minute):

    python3 -m pip install numpy scipy mpmath
    python3 tests/independent/motion.py

A row "| name | printed | value | yes |" says that a number printed elsewhere is the value rounded to its digits;
everything else is a value to ten digits. The tests of src/disciplines/motion hold these values as numbers
(tests/references/), so that running this is needed only to see where they come from. docs/evidence.md says what was found.
"""
import math
import numpy as np
import mpmath as mp
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, linprog, minimize_scalar

G = 9.80665
RPM = math.pi / 30


def show(name, *values):
    print(f"{name:<58}", *(f"{v:.10g}" if isinstance(v, (int, float, np.floating)) else v for v in values))


def check(name, printed, value):
    """Compare with a printed number to its last digit; the exponent, if any, follows an e."""
    digits = printed.lower().split("e")[0]
    places = len(digits.split(".")[1]) if "." in digits else 0
    scale = 10.0 ** int(printed.lower().split("e")[1]) if "e" in printed.lower() else 1.0
    ok = abs(round(value / scale, places) - float(digits)) < 0.5 * 10.0 ** -places
    print(f'| {name} | {printed} | {value:.10g} | {"yes" if ok else "NO"} |')


def head(title):
    print(f"\n## {title}")


# --- two-phase hybrid stepper, phase-peak quantities: v_d = R i_d - X i_q, v_q = R i_q + X i_d + K w, X = Nr w L, T = K i_q
REF = dict(R=0.9, L=2.5e-3, Nr=50, Th=1.26, I=2.8)


def constant(m):
    return m["Th"] / (math.sqrt(2) * m["I"])


def capacity_scan(m, w, V, Imax=None, sign=1, n=4001, rounds=14):
    """Greatest sign*T by scanning both boundary circles (voltage and current) for points allowed by the other one.

    Returns (torque, i_d, i_q), or None when no current satisfies both limits.  Each round narrows the window round the best point."""
    K, R, X = constant(m), m["R"], m["Nr"] * w * m["L"]
    def volts2(d, q):
        return (R * d - X * q) ** 2 + (R * q + X * d + K * w) ** 2
    def on_voltage(a):
        vd, vq = -V * np.sin(a), V * np.cos(a) - K * w
        z2 = R * R + X * X
        return (R * vd + X * vq) / z2, (R * vq - X * vd) / z2
    def on_current(a):
        return Imax * np.cos(a), Imax * np.sin(a)
    best = None
    for circle in [on_voltage] + ([on_current] if Imax else []):
        lo, hi = -math.pi, math.pi
        found = None
        for _ in range(rounds):
            a = np.linspace(lo, hi, n)
            d, q = circle(a)
            ok = np.ones(n, bool)
            if circle is on_current:
                ok = volts2(d, q) <= V * V * (1 + 1e-13)
            elif Imax:
                ok = d * d + q * q <= Imax * Imax * (1 + 1e-13)
            if not ok.any():
                break
            i = np.where(ok, sign * q, -np.inf).argmax()
            found = (K * q[i], d[i], q[i])
            half = 2 * (hi - lo) / (n - 1)
            lo, hi = a[i] - half, a[i] + half
        if found and (best is None or sign * found[0] > sign * best[0]):
            best = found
    return best


def pull_out(m, w, V):
    """Closed form, voltage limit only."""
    K, X = constant(m), m["Nr"] * w * m["L"]
    Z = math.hypot(m["R"], X)
    return K * (V / Z - K * w * m["R"] / Z**2)


def locked_speed_mean_torque(m, w, V, angle):
    """Mean torque from the two phase circuits integrated in time at fixed speed; angle = voltage ahead of the EMF."""
    K, R, L, we = constant(m), m["R"], m["L"], m["Nr"] * w
    period = 2 * math.pi / we
    def f(t, y):
        th = we * t
        va, vb = V * math.cos(th + angle), V * math.sin(th + angle)
        ea, eb = K * w * math.cos(th), K * w * math.sin(th)
        return [(va - R * y[0] - ea) / L, (vb - R * y[1] - eb) / L,
                K * (y[0] * math.cos(th) + y[1] * math.sin(th))]
    settle = math.ceil(30 * L / R / period) * period
    s = solve_ivp(f, (0, settle + period), [0, 0, 0], method="DOP853", rtol=1e-11, atol=1e-13, t_eval=[settle, settle + period])
    return (s.y[2, 1] - s.y[2, 0]) / period


head("Reference motor")
K = constant(REF)
show("constant per phase, peak, N*m/A", K)
show("RMS constant Th/(2 I)", REF["Th"] / (2 * REF["I"]))
show("peak over RMS constant", K / (REF["Th"] / (2 * REF["I"])))
show("L/R ms", 1e3 * REF["L"] / REF["R"])
Ip = math.sqrt(2) * REF["I"]
show("peak current A", Ip)

head("Pull-out, V = 12: rpm, V-only formula, V-only scan, with current limit, i_d, i_q")
for V, label in ((12.0, "12 V sinusoid"), (48 / math.pi, "4*12/pi V")):
    for rpm in (60, 150, 200, 250, 300, 600, 1200):
        w = rpm * RPM
        lim = capacity_scan(REF, w, V, Ip)
        show(f"{label} {rpm}", pull_out(REF, w, V), capacity_scan(REF, w, V)[0], *lim)
w = 300 * RPM
show("12 V, 300 rpm, time-domain mean torque at the best angle",
     locked_speed_mean_torque(REF, w, 12.0, math.atan2(50 * w * REF["L"], REF["R"])))


def knee(m, V):
    K, Ip = constant(m), math.sqrt(2) * m["I"]
    return brentq(lambda w: (K * w + m["R"] * Ip) ** 2 + (m["Nr"] * w * m["L"] * Ip) ** 2 - V * V, 0, 1e4, xtol=1e-14)


def limit_free_from(m, V):
    """Speed above which the current at the voltage-only optimum is inside the current circle."""
    Ip = math.sqrt(2) * m["I"]
    def excess(w):
        _, d, q = capacity_scan(m, w, V)
        return math.hypot(d, q) - Ip
    return brentq(excess, knee(m, V), knee(m, V) * 3)


for V in (12.0, 24.0, 48 / math.pi):
    k, f = knee(REF, V), limit_free_from(REF, V)
    show(f"V={V:.6f}: knee rad/s, rpm, full steps/s", k, k / RPM, k * 200 / (2 * math.pi))
    show("   current limit idle from rad/s, rpm", f, f / RPM)
show("greatest braking torque 12 V, 300 rpm, V-only / limited",
     capacity_scan(REF, w, 12.0, sign=-1)[0], capacity_scan(REF, w, 12.0, Ip, sign=-1)[0])
show("greatest braking torque 12 V, 600 rpm, V-only / limited",
     capacity_scan(REF, 2 * w, 12.0, sign=-1)[0], capacity_scan(REF, 2 * w, 12.0, Ip, sign=-1)[0])
weak = dict(R=5.0, L=10e-3, Nr=50, Th=1.0, I=2.0)
show("resistance-limited at rest: R=5 I=2 Th=1 12 V, w->0", capacity_scan(weak, 1e-9, 12.0, math.sqrt(2) * 2)[0], 12 / 5 * constant(weak))
stiff = dict(R=5.0, L=8e-3, Nr=50, Th=2.6, I=1.0)
show("no torque: R=5 L=8mH I=1 Th=2.6 12 V 300 rpm V-only", capacity_scan(stiff, w, 12.0)[0])
stuck = dict(R=5.0, L=8e-3, Nr=50, Th=2.0, I=0.4)
show("no feasible current: R=5 L=8mH I=0.4 Th=2 12 V 300 rpm", str(capacity_scan(stuck, w, 12.0, math.sqrt(2) * 0.4)),
     "least |i|, limit:", (constant(stuck) * w - 12) / math.hypot(5, 50 * w * 8e-3), math.sqrt(2) * 0.4)

for rpm, a, b in ((60, "2.7953", "1.2600"), (150, "1.4610", "1.2600"), (300, "0.7714", "0.7714"), (600, "0.3914", "0.3914")):
    check(f"pull-out 12 V, {rpm} rpm, V-only", a, capacity_scan(REF, rpm * RPM, 12.0)[0])
    check(f"pull-out 12 V, {rpm} rpm, current limit", b, capacity_scan(REF, rpm * RPM, 12.0, Ip)[0])
check("torque constant, peak", "0.31820", K)
check("knee i_d=0, rpm", "157.3", knee(REF, 12.0) / RPM)
check("knee i_d=0, full steps/s", "524", knee(REF, 12.0) * 200 / (2 * math.pi))

head("Capacity against holding torque, rated current fixed")
for base, V, rpm, list_ in ((dict(R=5.0, L=8e-3, Nr=50, I=1.0), 12.0, 300, (0.4, 0.6, 0.73, 0.9, 1.2, 1.4)),
                            (dict(R=5.0, L=8e-3, Nr=50, I=0.6), 12.0, 300, (0.2, 0.3, 0.4, 0.6, 0.8)),
                            (dict(R=0.9, L=2.5e-3, Nr=50, I=2.8), 12.0, 300, (1.26, 2.0, 4.0, 5.0))):
    w_, lim = rpm * RPM, math.sqrt(2) * base["I"]
    cap = lambda Th: (capacity_scan(dict(base, Th=Th), w_, V, lim) or (-9,))[0]  # -9: no current satisfies both limits
    for Th in list_:
        show(f"R={base['R']} L={base['L']} I={base['I']} {rpm} rpm Th={Th}: limited, V-only", cap(Th), pull_out(dict(base, Th=Th), w_, V))
    # capacity = e i_q / w with e = K w; the allowed set is convex in (e, i_d, i_q), so capacity rises and then falls, never the reverse
    coarse = max(np.linspace(0.05, 5, 300), key=cap)
    best = minimize_scalar(lambda Th: -cap(Th), bounds=(coarse - 0.02, coarse + 0.02), method="bounded", options=dict(xatol=1e-9))
    show("   greatest: Th, capacity", best.x, -best.fun)
Z = math.hypot(5, 50 * w * 8e-3)
show("V-only stationary point: Th=sqrt2 I V Z/(2 w R), V^2/(4 w R)", math.sqrt(2) * 12 * Z / (2 * w * 5), 144 / (4 * w * 5))

head("Rules of thumb, resonance, lag, copper")
show("V/(2 L I spr) rev/s and rpm, 12 V; rpm, 24 V; 2 I V", 12 / (2 * 2.5e-3 * 2.8 * 200), 60 * 12 / (2 * 2.5e-3 * 2.8 * 200),
     60 * 24 / (2 * 2.5e-3 * 2.8 * 200), 2 * 2.8 * 12)
for mH in (1.5, 2.5, 6):
    show(f"1000 sqrt(L) and 32 sqrt(mH), {mH} mH", 1000 * math.sqrt(mH * 1e-3), 32 * math.sqrt(mH))


def ring(torque, J, small=1e-6):
    """Frequency of small oscillation by integrating J x'' = -torque(x): time from peak to the third zero crossing."""
    hit = lambda t, y: y[0]
    w0 = math.sqrt((torque(small) / small) / J)
    s = solve_ivp(lambda t, y: [y[1], -torque(y[0]) / J], (0, 12 / w0), [small, 0], events=hit, method="DOP853", rtol=1e-12, atol=1e-18)
    e = s.t_events[0]
    return 1 / (e[2] - e[0])


ka = 0.0032 / math.radians(0.3)
show("A: stiffness, rad/s, Hz", ka, math.sqrt(ka / 4.8e-6), ring(lambda x: ka * x, 4.8e-6))
for J in (3e-5, 6e-5):
    show(f"B: 1.26 sin(50 x), J={J}: Hz", ring(lambda x: 1.26 * math.sin(50 * x), J))
show("Th*200/(2 pi) and its ratio to Nr*Th", 1.26 * 200 / (2 * math.pi), 63 / (1.26 * 200 / (2 * math.pi)))
lag = brentq(lambda x: 1.26 * math.sin(50 * x) - 0.30, 0, math.pi / 100, xtol=1e-16)
show("static lag deg, full steps", math.degrees(lag), math.degrees(lag) / 1.8)
grid = np.linspace(0, 2 * math.pi, 4000, endpoint=False)
show("copper W: full step 2 I^2 R; sinusoid, peak I (mean over a turn)", 2 * 2.8**2 * 0.9,
     np.mean((2.8 * np.cos(grid)) ** 2 + (2.8 * np.sin(grid)) ** 2) * 0.9)
for m_, t_ in ((1.5, "38.73"), (2.5, "50"), (6, "77")):
    check(f"1000 sqrt(L), {m_} mH", t_, 1000 * math.sqrt(m_ * 1e-3))
check("A stiffness", "0.611", ka)
check("A rad/s", "357", math.sqrt(ka / 4.8e-6))
check("A Hz", "56.8", ring(lambda x: ka * x, 4.8e-6))
check("B Hz, J=3e-5", "230.64", ring(lambda x: 1.26 * math.sin(50 * x), 3e-5))
check("B Hz, J=6e-5", "163.09", ring(lambda x: 1.26 * math.sin(50 * x), 6e-5))
check("static lag, deg", "0.2755", math.degrees(lag))
check("static lag, full steps", "0.153", math.degrees(lag) / 1.8)
check("copper full step, W", "14.11", 2 * 2.8**2 * 0.9)
check("copper, I as peak, W", "7.06", np.mean((2.8 * np.cos(grid)) ** 2 + (2.8 * np.sin(grid)) ** 2) * 0.9)
check("2.625 in circle, mm", "66.68", 2.625 * 25.4)
check("hole spacing from circle, in", "1.8562", 2.625 / math.sqrt(2))
check("hole spacing from circle, mm", "47.14", 2.625 / math.sqrt(2) * 25.4)
check("47.14 mm in inches", "1.856", 47.14 / 25.4)
show("NEMA 23: 47.14 mm in inches, 2.625/sqrt2 in, mm, circle mm", 47.14 / 25.4, 2.625 / math.sqrt(2), 2.625 / math.sqrt(2) * 25.4, 2.625 * 25.4)

head("Profiles")


def jerk_time(D, v, a, j):
    """Rest-to-rest time under all three limits and the peaks reached, from the phase durations."""
    tj = min((D / (2 * j)) ** (1 / 3), math.sqrt(v / j), a / j)
    ta = 0.0 if tj < a / j * (1 - 1e-12) else max(0.0, min(v / a - tj, (-3 * tj + math.sqrt(tj * tj + 4 * D / a)) / 2))
    vp = j * tj * (tj + ta)
    tc = max(0.0, D / vp - (2 * tj + ta))
    return 4 * tj + 2 * ta + tc, tj, ta, tc, j * tj, vp


def travelled(j, tj, ta, tc):
    """Distance by stepping the jerk pulses exactly through position, speed and acceleration."""
    x = v = a = 0.0
    for s, d in ((1, tj), (0, ta), (-1, tj), (0, tc), (-1, tj), (0, ta), (1, tj)):
        J = s * j
        x, v, a = x + v * d + a * d * d / 2 + J * d**3 / 6, v + a * d + J * d * d / 2, a + J * d
    return x, v, a


def farthest(T, v, a, j, n=400):
    """Greatest distance in time T by a linear programme over n constant-jerk pieces (a lower bound tending to the exact value)."""
    h = T / n
    A = np.tril(np.ones((n, n))) * j * h                                   # acceleration at piece ends, per unit jerk
    prev = np.vstack([np.zeros(n), A[:-1]])
    Vm = np.cumsum(prev * h + np.eye(n) * j * h * h / 2, axis=0)           # speed at piece ends
    vprev = np.vstack([np.zeros(n), Vm[:-1]])
    x = (vprev * h + prev * h * h / 2 + np.eye(n) * j * h**3 / 6).sum(axis=0)
    r = linprog(-x, A_ub=np.vstack([A, -A, Vm]), b_ub=np.r_[np.full(2 * n, a), np.full(n, v)],
                A_eq=np.vstack([A[-1], Vm[-1]]), b_eq=[0, 0], bounds=(-1, 1), method="highs")
    return -r.fun


show("trapezoid .5/.25/1: ta, tc, total", 0.25 / 1, (0.5 - 0.25**2 / 1) / 0.25, farthest(2.25, 0.25, 1, 1e4, 450), "<- LP distance in 2.25 s, jerk 1e4")
show("triangular .05/1: v_pk, total", math.sqrt(0.05), 2 * math.sqrt(0.05))
for name, args in (("all limits reached", (0.5, 0.25, 1, 10)), ("speed reached, acceleration not", (0.5, 0.05, 1, 10)),
                   ("acceleration reached, speed not", (0.05, 0.25, 1, 10)), ("neither reached", (0.01, 0.25, 1, 10)),
                   ("edge v = a^2/j", (0.5, 0.1, 1, 10)), ("edge D = 2 a^3/j^2", (0.02, 0.25, 1, 10)),
                   ("edge D = v^2/a + v a/j", (0.0875, 0.25, 1, 10)),
                   ("speed not reached, below v = a^2/j", (0.004, 0.05, 1, 10))):
    T, tj, ta, tc, ap, vp = jerk_time(*args)
    show(f"{name} {args}: T tj ta tc a_pk v_pk", T, tj, ta, tc, ap, vp)
    show("      stepped distance; LP distance in T and in 0.99 T", travelled(args[3], tj, ta, tc)[0], farthest(T, *args[1:]), farthest(0.99 * T, *args[1:]))
show("thirds, 200 mm in 1 s: v, a", 0.2 / (2 / 3), 0.2 / (2 / 3) * 3)

def hull(z1, z2, C, n=400000):
    """Length of the taut loop: support function of the hull of two circles integrated over direction (Cauchy); arc touching circle 1."""
    r1, r2 = z1 / math.pi, z2 / math.pi
    a = (np.arange(n) + 0.5) * 2 * math.pi / n
    on1 = r1 > C * np.cos(a) + r2
    return np.mean(np.maximum(r1, C * np.cos(a) + r2)) * 2 * math.pi, on1.mean() * 360


head("Belt axis, RMS, hoist, rack")
r = 20 * 2 / (2 * math.pi) * 1e-3
F = 2 * 2 + 0.02 * 2 * G
show("r mm, F, T, T/0.95, J, J g cm2, ratio", r * 1e3, F, F * r, F * r / 0.95, 2 * r * r, 2 * r * r * 1e7, 2 * r * r * 1e7 / 300)
steps = ((0.05, 0.25), (0.015, 1.75), (-0.02, 0.25), (0, 1.0))
show("RMS torque", math.sqrt(math.fsum(T * T * t for T, t in steps) / math.fsum(t for _, t in steps)))
show("hoist static, +1 m/s2", 0.6 * G * 6.5e-3, 0.6 * (G + 1) * 6.5e-3)
show("rack: lb in2, rev/s, steps/s", 5 * 1.5**2, 15 * 12 / (2 * math.pi * 1.5), 200 * 15 * 12 / (2 * math.pi * 1.5))
show("span tension N", 4 * 0.0084 * 0.4**2 * 60**2)
for n_, t_, v_ in (("belt F", "4.3923", F), ("belt T", "0.027962", F * r), ("belt T/0.95", "0.029434", F * r / 0.95),
                   ("belt J", "8.1057e-5", 2 * r * r), ("belt J g cm2", "810.6", 2 * r * r * 1e7), ("inertia ratio", "2.70", 2 * r * r * 1e7 / 300),
                   ("RMS torque", "0.018553", math.sqrt(math.fsum(T * T * t for T, t in steps) / 3.25)),
                   ("hoist static", "0.038246", 0.6 * G * 6.5e-3), ("hoist +1 m/s2", "0.042146", 0.6 * (G + 1) * 6.5e-3),
                   ("rack lb in2", "11.25", 5 * 1.5**2), ("rack rev/s", "19.1", 180 / (3 * math.pi)), ("rack steps/s", "3820", 200 * 180 / (3 * math.pi)),
                   ("span tension", "19.354", 4 * 0.0084 * 0.4**2 * 60**2), ("25 lbf/in x 6 mm", "26", 25 * 4.4482216152605 * 6 / 25.4),
                   ("20/20 belt", "1040.0", hull(20, 20, 500)[0]), ("20/60 belt", "281.623", hull(20, 60, 100)[0]),
                   ("16/60 wrap deg", "153.002", hull(16, 60, 60, 8000000)[1]), ("16/60 teeth", "6.80", hull(16, 60, 60)[1] / 360 * 16)):
    check(n_, t_, v_)
show("rolling: 20 N, D 24, d 5 mm, mu_b .005, f .5 mm, c .003", 20 * (2 / 24) * (0.005 * 2.5 + 0.5) + 0.003 * 20)
show("rolling: 20 N, D 24, d 5 mm, mu_b .1, f 2 mm, c .005", 20 * (2 / 24) * (0.1 * 2.5 + 2) + 0.005 * 20)
show("inches: 0.02, 0.08 in mm", 0.02 * 25.4, 0.08 * 25.4)
show("25 lbf/in, 6 mm: N per 25.4 mm, N", 25 * 4.4482216152605, 25 * 4.4482216152605 * 6 / 25.4)

head("Belt geometry")


show("20T: pitch diameter, per rev, per full step, per 1/16", 40 / math.pi, 40.0, 40 / 200, 40 / 3200)
for z1, z2, C in ((20, 20, 500), (20, 60, 100), (16, 60, 60)):
    r1, r2 = z1 / math.pi, z2 / math.pi
    L = 2 * math.sqrt(C**2 - (r2 - r1) ** 2) + math.pi * (r1 + r2) + 2 * (r2 - r1) * math.asin((r2 - r1) / C)
    wrap = 2 * math.degrees(math.acos((r2 - r1) / C))
    num, numwrap = hull(z1, z2, C)
    show(f"{z1}/{z2} C={C}: formula, hull, wrap, hull wrap, teeth", L, num, wrap, numwrap, wrap / 360 * z1)

head("Shorted windings as a brake")


def brake(m, w):
    K, X = constant(m), m["Nr"] * w * m["L"]
    return K * K * w * m["R"] / (m["R"] ** 2 + X * X)


for w_ in (0.5, 3.6, 7.2, 20, 100):
    show(f"w={w_}: formula, two-phase time domain", brake(REF, w_), -locked_speed_mean_torque(REF, w_, 0.0, 0.0))
peak = minimize_scalar(lambda x: -brake(REF, x), bounds=(0.1, 100), method="bounded", options=dict(xatol=1e-10))
show("peak: found w, T; R/(Nr L), K^2/(2 Nr L)", peak.x, -peak.fun, 0.9 / 0.125, K**2 / 0.25)


def sink(m, T):
    """Both speeds at which the brake carries T, from the peak outwards."""
    w0 = m["R"] / (m["Nr"] * m["L"])
    return brentq(lambda x: brake(m, x) - T, 0, w0, xtol=1e-15), brentq(lambda x: brake(m, x) - T, w0, 1e7, xtol=1e-12, rtol=1e-14)


def brake_eigen(m, w, J):
    """Linear stability at steady sinking, states i_d, i_q, w (constant load torque)."""
    K, R, L, Nr = constant(m), m["R"], m["L"], m["Nr"]
    X = Nr * w * L
    iq = -K * w * R / (R * R + X * X)
    idd = X * iq / R
    A = np.array([[-R / L, Nr * w, Nr * iq], [-Nr * w, -R / L, -Nr * idd - K / L], [0, K / J, 0]])
    return np.sort_complex(np.linalg.eigvals(A))


def fmt(ev):
    return "  ".join(f"{e.real:.6g}{e.imag:+.6g}j" for e in ev)


for T in (0.6 * G * 6.5e-3, 0.2, 0.4):
    for root in sink(REF, T):
        show(f"T={T:.7f}: w, rpm, mm/s on r=6.5 mm", root, root / RPM, root * 6.5)
        print("      eigenvalues J=6e-5:", fmt(brake_eigen(REF, root, 6e-5)))
stable = lambda J: brentq(lambda x: brake_eigen(REF, x, J).real.max(), 0.05 * 7.2, 0.999999 * 7.2)
for J in (2e-5, 6e-5, 1e-3, 1e-2):
    worst = [brake_eigen(REF, x, J).real.max() for x in np.linspace(0.01, 7.19, 400)]
    if max(worst) > 0:
        w_ = stable(J)
        show(f"J={J}: slow branch oscillates from w, torque there, share of peak", w_, brake(REF, w_), brake(REF, w_) / (K**2 / 0.25))
    else:
        show(f"J={J}: slow branch stable throughout; greatest real part", max(worst))


def lower(m, T, J, t_end, w_start=0.0):
    """Speed under constant load torque, windings shorted, from given speed and no current."""
    K, R, L, Nr = constant(m), m["R"], m["L"], m["Nr"]
    f = lambda t, y: [(-R * y[0]) / L + Nr * y[2] * y[1], (-R * y[1] - K * y[2]) / L - Nr * y[2] * y[0], (T + K * y[1]) / J]
    s = solve_ivp(f, (0, t_end), [0, 0, w_start], method="Radau", rtol=1e-9, atol=1e-11)
    return s.y[2], s.t


for T, t_end in ((0.6 * G * 6.5e-3, 0.5), (0.2, 1.0), (0.39, 1.0), (0.42, 0.5)):
    ws, _ = lower(REF, T, 6e-5, t_end)
    show(f"released at rest, T={T:.6f}, J=6e-5: last w, greatest w", ws[-1], ws.max())

for T in (0.6 * G * 6.5e-3, 0.2, 0.4):
    for J in (6e-5, 1e-3):
        ws, ts = lower(REF, T, J, 2.0)
        last = np.flatnonzero(np.abs(ws / sink(REF, T)[0] - 1) > 0.1)[-1]  # from here on within a tenth of the slow root
        turned = np.sum((ws[1:last + 1] + ws[:last]) / 2 * np.diff(ts[:last + 1]))
        show(f"T={T:.6f}, J={J}: greatest w over slow root, within a tenth after s, rad", ws.max() / sink(REF, T)[0], ts[last], turned)

for T in (0.40, 0.404):
    for J in (6e-5, 1e-3):
        ws, _ = lower(REF, T, J, 10.0)
        show(f"released at rest, T={T}, J={J}: last w, slow root, greatest w", ws[-1], sink(REF, T)[0], ws.max())
for start in (140.0, 160.0):
    ws, ts = lower(REF, 0.6 * G * 6.5e-3, 6e-5, 2.0, start)
    show(f"T=0.0382459 thrown in at w={start}: w after 2 s", ws[-1])

head("Drum with layers")


def layers(D, d, width, count, nested):
    """Turns per layer, then radius to the line's centre, helix length and running total for each layer (mm)."""
    turns = int(math.floor(width / d + 1e-9))
    total = 0.0
    for k in range(count):
        rad = D / 2 + d / 2 + k * d * (math.sqrt(3) / 2 if nested else 1)
        t = np.linspace(0, 2 * math.pi * turns, 40001)
        xyz = np.c_[rad * np.cos(t), rad * np.sin(t), d * t / (2 * math.pi)]
        helix = np.linalg.norm(np.diff(xyz, axis=0), axis=1).sum()
        total += 2 * math.pi * rad * turns
        show(f"layer {k + 1} {'nested' if nested else 'stacked'}: r, 2 pi r n, total, helix", rad, 2 * math.pi * rad * turns, total, helix)


layers(12.0, 1.0, 10.0, 3, False)
layers(12.0, 1.0, 10.0, 3, True)

head("Mid-band: linearised about steady running, states i_d, i_q, w, delta")
MB = dict(R=1.0, L=3e-3, K=0.2778, Nr=50, J=6e-5, V=12.0)
# L i_d' = -R i_d + Nr w L i_q - V sin d ; L i_q' = -R i_q - Nr w L i_d - K w + V cos d ; J w' = K i_q - T - B w ; d' = Nr (w0 - w)


def equilibrium(m, w, T=0.0):
    X = m["Nr"] * w * m["L"]
    Z2 = m["R"] ** 2 + X * X
    iq = T / m["K"]
    c = (iq * Z2 + m["R"] * m["K"] * w) / (m["V"] * math.sqrt(Z2))
    if abs(c) > 1:
        return None
    d = math.atan2(X, m["R"]) - math.acos(c)
    return (X * iq - m["V"] * math.sin(d)) / m["R"], iq, d


def matrix(m, w, T=0.0, B=0.0):
    idd, iq, d = equilibrium(m, w, T)
    R, L, K, Nr, J, V = (m[k] for k in ("R", "L", "K", "Nr", "J", "V"))
    return np.array([[-R / L, Nr * w, Nr * iq, -V * math.cos(d) / L],
                     [-Nr * w, -R / L, -Nr * idd - K / L, -V * math.sin(d) / L],
                     [0, K / J, -B / J, 0],
                     [0, 0, -Nr, 0]])


def growth(m, w, T=0.0, B=0.0):
    return np.linalg.eigvals(matrix(m, w, T, B)).real.max()


def nonlinear(m, w, t_end, kick, T=0.0):
    """Full equations started near steady running; returns times and the size of the speed deviation."""
    R, L, K, Nr, J, V = (m[k] for k in ("R", "L", "K", "Nr", "J", "V"))
    idd, iq, d = equilibrium(m, w, T)
    f = lambda t, y: [-R / L * y[0] + Nr * y[2] * y[1] - V / L * math.sin(y[3]),
                      -R / L * y[1] - Nr * y[2] * y[0] - K / L * y[2] + V / L * math.cos(y[3]),
                      (K * y[1] - T) / J, Nr * (w - y[2])]
    s = solve_ivp(f, (0, t_end), [idd, iq, w + kick, d], method="DOP853", rtol=1e-11, atol=1e-13, max_step=1e-4)
    return s.t, s.y[2] - w


def measured_growth(m, w, t_end, kick):
    t, x = nonlinear(m, w, t_end, kick)
    pk = [i for i in range(1, len(x) - 1) if abs(x[i]) >= abs(x[i - 1]) and abs(x[i]) > abs(x[i + 1]) and t[i] > 0.4 * t_end]
    return np.polyfit(t[pk], np.log(np.abs(x[pk])), 1)[0]


for rpm in (60, 120, 300, 600, 1200, 2400):
    w_ = rpm * RPM
    e = equilibrium(MB, w_)
    show(f"{rpm} rpm: i_d, i_q, delta", *e)
    for row in matrix(MB, w_):
        print("      [" + ", ".join(f"{x + 0.0:.7g}" for x in row) + "]")
    print("      eigenvalues:", fmt(np.sort_complex(np.linalg.eigvals(matrix(MB, w_)))), "UNSTABLE" if growth(MB, w_) > 0 else "stable")
    g = growth(MB, w_)
    show("      growth: linear, measured on the full equations", g, measured_growth(MB, w_, 1.2 if abs(g) < 8 else 0.3, 1e-7 if g > 0 else 1e-3))
speeds = np.geomspace(0.5, 2000, 20000)
sign = [growth(MB, x) for x in speeds]
for a, b, x, y in zip(sign, sign[1:], speeds, speeds[1:]):
    if a * b < 0:
        e = brentq(lambda z: growth(MB, z), x, y, xtol=1e-12)
        show("stability changes at rad/s, rpm, full steps/s", e, e / RPM, e * 200 / (2 * math.pi))
i = int(np.argmax(sign))
show("fastest growth at rad/s, 1/s", speeds[i], sign[i])
for T in (0.05, 0.1, 0.2):
    s = [growth(MB, x, T) if equilibrium(MB, x, T) else None for x in speeds]
    u = [x for x, v in zip(speeds, s) if v is not None and v > 0]
    show(f"load torque {T} N*m: unstable from, to rad/s; fastest growth 1/s; pull-out speed", u[0], u[-1], max(v for v in s if v is not None), max(x for x, v in zip(speeds, s) if v is not None))
for B in (0.0005, 0.001, 0.002):
    s = [growth(MB, x, 0.0, B) for x in speeds]  # equilibrium kept at i_q = 0: drag carried by an equal outside torque
    u = speeds[np.array(s) > 0]
    show(f"viscous damping {B} N*m*s: unstable from, to rad/s", *((u.min(), u.max()) if len(u) else ("none",)))
