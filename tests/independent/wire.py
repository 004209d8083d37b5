"""Independent reference values for wire, heat, contact current and small power sums, in 30-digit arithmetic.

How to run it, from the root of the repository (Python 3.10 or newer; a second):

    python3 -m pip install mpmath scipy
    python3 tests/independent/wire.py

A row "| name | printed | value | yes |" says that a number printed elsewhere is the value rounded to its digits;
everything else is a value to ten digits. docs/evidence.md says what was found.
"""
import mpmath as mp
from scipy.integrate import quad
from scipy.optimize import brentq

mp.mp.dps = 30
RHO, ALPHA = mp.mpf("0.017241"), mp.mpf("0.00393")  # ohm mm2/m at 20 C, per K


def show(name, *values):
    print(f"{name:<58}", *(f"{float(v):.10g}" for v in values))


def check(name, printed, value):
    """Compare with a printed number to its last digit."""
    places = len(printed.split(".")[1]) if "." in printed else 0
    value = float(value)
    ok = abs(round(value, places) - float(printed)) < 0.5 * 10.0 ** -places
    print(f'| {name} | {printed} | {value:.10g} | {"yes" if ok else "NO"} |')


def diameter(n):
    """0.005 in at 36 and 0.46 in at 0000 with 39 equal ratios between."""
    return mp.mpf("25.4") * mp.mpf("0.005") * (mp.mpf("0.46") / mp.mpf("0.005")) ** (mp.mpf(36 - n) / 39)


def area(n):
    return mp.pi * diameter(n) ** 2 / 4


def ohms(n, metres, t=20):
    return RHO / area(n) * metres * (1 + ALPHA * (t - 20))


print("\n## AWG")
TABLE = """10 2.5882 5.2612 3.277|11 2.3048 4.1723 4.132|12 2.0525 3.3088 5.211|13 1.8278 2.6240 6.571|14 1.6277 2.0809 8.285
15 1.4495 1.6502 10.448|16 1.2908 1.3087 13.174|17 1.1495 1.0378 16.612|18 1.0237 0.8230 20.948|19 0.9116 0.6527 26.415
20 0.8118 0.5176 33.308|21 0.7229 0.4105 42.00|22 0.6438 0.3255 52.96|23 0.5733 0.2582 66.78|24 0.5106 0.2047 84.21
25 0.4547 0.1624 106.19|26 0.4049 0.1288 133.90|27 0.3606 0.1021 168.85|28 0.3211 0.0810 212.92|29 0.2859 0.0642 268.48
30 0.2546 0.0509 338.55"""
for row in TABLE.replace("\n", "|").split("|"):
    n, d, a, r = row.split()
    check(f"AWG{n} d mm", d, diameter(int(n)))
    check(f"AWG{n} A mm2", a, area(int(n)))
    check(f"AWG{n} ohm/km", r, ohms(int(n), 1000))
for n, p in ((18, "0.6385"), (20, "1.015"), (22, "1.614"), (24, "2.567"), (26, "4.081"), (28, "6.490"), (30, "10.32")):
    v = float(ohms(n, mp.mpf("30.48")))
    print(f"| AWG{n} ohm/100 ft, cross-check table | {p} | {v:.10g} | {100 * (v / float(p) - 1):+.3f} % |")

print("\n## Drop, heat, fusing")
check("AWG24 10 m 20 C ohm", "0.8421", ohms(24, 10))
check("AWG24 10 m 60 C ohm", "0.9745", ohms(24, 10, 60))
check("two in parallel ohm", "0.4211", ohms(24, 10) / 2)
check("two in parallel, 2 A, V", "0.8421", ohms(24, 10))
check("AWG18 6 m ohm", "0.12569", ohms(18, 6))
check("AWG18 6 m 5 A V", "0.6284", ohms(18, 6) * 5)
check("AWG18 percent of 12 V", "5.24", ohms(18, 6) * 5 / 12 * 100)
check("AWG24 run at .5 A, .6 V, m", "7.125", mp.mpf("0.6") / mp.mpf("0.5") / ohms(24, 2))
check("AWG18 run at 5 A, .6 V, m", "2.864", mp.mpf("0.6") / 5 / ohms(18, 2))
A24 = area(24)
heat = (5 / (A24 * mp.mpf("1e-6"))) ** 2 * mp.mpf("1.7241e-8") / (385 * 8960)
check("AWG24 5 A K/s", "2.98", heat)
mils = diameter(24) / mp.mpf("25.4") * 1000
check("AWG24 circular mils", "404", mils**2)
onderdonk = lambda cm: cm * mp.sqrt(mp.log10(1 + mp.mpf(1083 - 25) / (234 + 25)) / 33)
check("Onderdonk AWG24 1 s", "59.1", onderdonk(mils**2))
show("   with 404 circular mils", onderdonk(404))
# heating to the melting point with resistivity linear in temperature: t = c d A^2/(rho I^2) * integral dT/(1 + a (T - 20))
integral = quad(lambda T: 1 / (1 + 0.00393 * (T - 20)), 25, 1083)[0]
show("   A, from the adiabatic integral itself", mp.sqrt(385 * 8960 * (A24 * mp.mpf("1e-6")) ** 2 / mp.mpf("1.7241e-8") * integral))
for t, p in ((30, "0.962"), (60, "0.862"), (70, "0.833")):
    check(f"1/(1+.004({t}-20))", p, 1 / (1 + mp.mpf("0.004") * (t - 20)))
show("0.00393 against 0.004 at 70 C", (1 + mp.mpf("0.004") * 50) / (1 + ALPHA * 50))
show("rho from 58 MS/m", 1 / mp.mpf(58))

print("\n## Pair cable")
per100 = mp.mpf("28.6") / mp.mpf("304.8") * 100
check("28.6 ohm/1000 ft as ohm/100 m", "9.38", per100)
check("same, three decimals", "9.383", per100)
check("loop ohm/m", "0.1876", 2 * per100 / 100)
check("against nominal AWG24", "1.114", per100 / ohms(24, 100))
check("960 mA per pair, A per conductor", "0.480", mp.mpf("0.96") / 2)
check("1.5 mm2 B2, 4 circuits, 50 C, A", "6.98", mp.mpf("13.1") * mp.mpf("0.65") * mp.mpf("0.82"))
show("CCA, 23 against 9.38 ohm/100 m", 23 / per100)

print("\n## Power and heat")
rms = mp.sqrt(quad(lambda t: 0.49 if t < 0.1 else 0.04, 0, 1, points=[0.1])[0])
check("0.7 A 10 %, 0.2 A 90 %", "0.29155", rms)
check("60 W at 87 %", "68.97", 60 / mp.mpf("0.87"))
check("60 W at 82 %", "73.17", 60 / mp.mpf("0.82"))
check("5 W a year kWh", "43.8", mp.mpf(5) * 8760 / 1000)
check("5 W a year at .30", "13.14", mp.mpf("43.8") * mp.mpf("0.3"))
check("0.5 W a year at .30", "1.314", mp.mpf("4.38") * mp.mpf("0.3"))
check("relay 71.4 mA at 5 V, W", "0.36", mp.mpf("0.0714") * 5)
for h in (5, mp.mpf("5.5"), 6):
    show(f"50 W, 1.5 m2, h={float(h)}: K", 50 / (h * mp.mpf("1.5")))


def winding(P0, Rth, alpha=0.00393):
    """Rise where heat made, growing with copper temperature, equals heat shed; none means runaway."""
    f = lambda x: P0 * (1 + alpha * x) * Rth - x
    return brentq(f, 0, 1e6) if f(1e6) < 0 else None


for P0, Rth in ((7.056, 4.0), (14.112, 4.0), (14.112, 18.0), (14.112, 18.1)):
    x = winding(P0, Rth)
    print(f"winding rise, P0={P0} W, Rth={Rth} K/W: {'runaway' if x is None else f'{x:.10g}'}")


def constant_power(P, V, R):
    """Upper-voltage root of a constant-power load behind a resistance, by bisection from the open-circuit end."""
    f = lambda u: u * (V - u) / R - P
    return brentq(f, V / 2, V, xtol=1e-15) if P <= V * V / (4 * R) else None


print("constant power 24 W, 12 V, 0.5 ohm: load volts", f"{constant_power(24, 12, 0.5):.10g}", "limit W", 12 * 12 / (4 * 0.5), "; 73 W:", constant_power(73, 12, 0.5))
