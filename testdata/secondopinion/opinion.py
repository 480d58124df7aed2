#!/usr/bin/env python3
"""A second opinion on what cutbrief works out.

It is written from what the program prints about itself (cutbrief rules, cutbrief
formats) and shares nothing with it: exact fractions where the program has
floating point, a search where it has a closed form. It reads visits from its
standard input, one JSON document a line, and writes one line of JSON for each.

    opinion.py SYSTEMS.csv PRICES.csv < visits > opinions
"""

import csv
import json
import math
import re
import sys
from bisect import bisect_left
from fractions import Fraction as F

# ---------------------------------------------------------------- the answers

UNITS = {  # to the unit the rules hold a kind in
    "thickness": {"mm": F(1), "in": F("25.4"), "cm": F(10)},
    "length": {"m": F(1), "mm": F(1, 1000), "ft": F("0.3048"), "in": F("0.0254")},
    "current": {"A": F(1)}, "voltage": {"V": F(1)}, "apparent": {"kVA": F(1)},
    "section": {"mm2": F(1)}, "volume": {"l": F(1), "gal": F("3.785411784")},
    "flow": {"l/min": F(1), "cfm": F("28.316846592")},
    "pressure": {"bar": F(1), "psi": F("0.45359237") * F("9.80665") / F("0.0254") ** 2 / 100000},
    "angle": {"degrees": F(1)}, "count": {"": F(1)}, "plain": {"": F(1)},
}

# kind, range of what is plausible, and whether "none" is an answer
QUANTITIES = {
    "everyday-thickness": ("thickness", "0.3", "300", False),
    "thickest-clean": ("thickness", "0.3", "300", False),
    "rare-thickest": ("thickness", "0.3", "300", True),
    "thickest-pierced": ("thickness", "0.3", "300", True),
    "bevelled-thickness": ("thickness", "0.3", "300", True),
    "cut-length": ("length", "0.01", "20000", False),
    "days-a-week": ("plain", "0.1", "7", False),
    "busy-cuts": ("count", "1", "1000", True),
    "busy-length": ("length", "0.005", "100", False),
    "bevel-angle": ("angle", "1", "70", False),
    "supply-voltage": ("voltage", "90", "1000", False),
    "breaker": ("current", "1", "2000", False),
    "cord-length": ("length", "0.5", "500", True),
    "cord-section": ("section", "0.5", "400", False),
    "generator-rating": ("apparent", "0.5", "5000", False),
    "air-delivery": ("flow", "5", "200000", False),
    "air-pressure": ("pressure", "0.5", "50", False),
    "hose-bore": ("thickness", "2", "150", False),
    "hose-length": ("length", "0.3", "1000", False),
    "altitude": ("length", "0", "5000", False),
    "labour-cost": ("plain", "0.5", "1000000", False),
    "gas-a-year": ("plain", "1", "100000000", False),
    "sent-out-a-year": ("plain", "1", "100000000", False),
    "budget": ("plain", "1", "10000000", False),
}


def quantity(question, said):
    """What a figure means, None where it sizes nothing."""
    kind, least, most, may_be_none = QUANTITIES[question]
    if may_be_none and re.fullmatch(r"none|0+(\.0+)?\s*[a-z]*", said):
        return F(0)
    if said == "none":
        return None
    number, *unit = said.split(" ")
    if unit and "/" in unit[0] and "0" <= unit[0][0] <= "9":  # 1 1/2 in
        number, unit = F(number) + F(unit[0]), unit[1:]
    value = F(number) * UNITS[kind][unit[0] if unit else ""]
    if kind == "count" and value.denominator != 1:
        return None
    return value if F(least) <= value <= F(most) else None


class Visit:
    """The answers that count: those told, plausible, and still asked for."""

    def __init__(self, record):
        self.told, self.by_metal = {}, {}
        for a in record["answers"]:
            if a.get("state") == "not-known":
                continue
            q = a["question"]
            if q == "cut-length":
                length, _, period = a["said"].partition(" a ")
                value = (quantity(q, length), period)
            elif q in QUANTITIES:
                value = quantity(q, a["said"])
            else:
                value = a.get("chosen")
            if value is None or value == (None, "week") or value == (None, "day"):
                continue
            if "metal" in a:
                self.by_metal.setdefault(a["metal"], {})[q] = value
            else:
                self.told[q] = value
        self.asked = {a["question"]: a for a in record["answers"]}
        self.metals = self.told.get("metals", [])
        self.overrule = (record.get("overrule") or {}).get("requirement", "")

    def one(self, q, otherwise=None):
        return self.told[q][0] if q in self.told else otherwise

    def several(self, q):
        return self.told.get(q, [])

    def figure(self, q):
        """A figure, unless an answer to another question makes it idle."""
        source, drier = self.one("power-source"), self.one("air-drier")
        idle = {
            "breaker": source == "generator",
            "generator-rating": source not in ("generator", "both"),
            "bevel-angle": "bevels" not in self.several("features"),
            "cord-section": self.told.get("cord-length") == 0,
            "busy-length": self.told.get("busy-cuts") == 0 or self.asked.get("busy-cuts", {}).get("state") == "not-known",
        }
        if idle.get(q) or (drier == "no-compressor" and re.match("air-(delivery|pressure)|hose", q)):
            return None
        return self.told.get(q)

    def piece(self, metal, q):
        if q == "thickest-pierced" and self.one("start") not in ("middle", "both"):
            return None
        if q == "bevelled-thickness" and "bevels" not in self.several("features"):
            return None
        return self.by_metal.get(metal, {}).get(q)

    def week(self):
        length, period = self.told.get("cut-length", (None, ""))
        if period == "day":
            days = self.told.get("days-a-week")
            return None if days is None or length is None else length * days
        return length

    def billed(self, q):
        """The sums of a year count where the way they are spent on is in use, on
        metal it cuts; the kind of gas only where no bill is told."""
        known = lambda q: q in self.asked and self.asked[q].get("state") != "not-known"
        if q == "sent-out-a-year":
            asked = "sent-out" in self.several("today") and known("cut-length")
        else:
            asked = "oxy-fuel" in self.several("today") and set(self.metals) & {"mild-steel", "galvanised-steel"}
            asked = asked and known("cut-length") if q == "gas-a-year" else asked and not (known("cut-length") and known("gas-a-year"))
        return self.told.get(q) if asked else None

    def labour(self):
        return self.told.get("labour-cost") if set(self.several("today")) - {"other"} else None


# ------------------------------------------------------------- what decides

ORDER = ["cutting-speed", "low-distortion", "edge-quality", "ease-of-use", "running-cost", "portability", "reach", "across-gaps"]
COMPLAINT = dict(zip(["too-slow", "warps", "rough-edge", "hard-to-use", "costs-too-much", "too-heavy", "too-thick", "gaps"], ORDER))


def hints(v):
    """What the answers point to, with its weight."""
    today, edges, places, features = (set(v.several(q)) for q in ("today", "edge-next", "places", "features"))
    everyday = [v.piece(m, "everyday-thickness") for m in v.metals]
    thickest = [v.piece(m, q) for m in v.metals for q in ("thickest-clean", "rare-thickest")]
    thin = lambda most: any(t is not None and t <= most for t in everyday)
    week = v.week()
    yield "cutting-speed", 3, v.one("use") == "production"
    yield "cutting-speed", 2, week is not None and week > 100
    yield "cutting-speed", 1, today & {"abrasive-disc", "band-saw"}
    yield "low-distortion", 2, thin(3) and "painted-seen" in edges
    yield "low-distortion", 2, thin(6) and "oxy-fuel" in today
    yield "edge-quality", 3, "painted-seen" in edges
    yield "edge-quality", 1, "welded" in edges
    yield "edge-quality", 1, features & {"holes", "shapes"}
    yield "ease-of-use", 3, v.one("experience") == "new"
    yield "running-cost", 3, "sent-out" in today
    yield "running-cost", 1, "oxy-fuel" in today
    yield "portability", 3, "up-high" in places
    yield "portability", 3, "field" in places
    yield "portability", 1, "in-place" in places
    yield "reach", 3, any(t is not None and t >= 25 for t in thickest)
    yield "across-gaps", 4, "gaps" in features


def deciding(v):
    """The requirement that stands, and whether speed sizes the system."""
    said, inferred = dict.fromkeys(ORDER, 0), dict.fromkeys(ORDER, 0)
    complaints = [v.one("annoys-most")]
    if complaints[0] and complaints[0] != "nothing":
        complaints.append(v.one("annoys-next"))
    for c, weight in zip([c for c in complaints if c], (10, 6)):
        if c in COMPLAINT:
            said[COMPLAINT[c]] += weight
    for requirement, weight, holds in hints(v):
        inferred[requirement] += weight if holds else 0
    first = lambda among: max(among, key=lambda r: (said[r], inferred[r]))  # the first of equals
    best = first(ORDER)
    if not said[best] and not inferred[best]:
        best = ""
    sure = v.overrule == "cutting-speed" or said["cutting-speed"] > 0 or inferred["cutting-speed"] >= 2
    sizes = v.overrule or best
    if not v.overrule and not any(said.values()) and best == "reach":
        sizes = first([r for r in ORDER if r != "reach"])  # a heavy section takes nothing from speed
    return v.overrule or best, sizes == "cutting-speed" and sure


# ---------------------------------------------------------------- the systems

COUNTS = {"mild-steel": F(1), "galvanised-steel": F(1), "stainless": F("1.15"), "aluminium": F("1.25"), "copper-brass": F("2.27"), "cast-iron": F("1.25")}
STEP = F("0.94")  # short by no more than 6 %
SAME = 1 - F(1, 10 ** 9)  # roots and logarithms are not exact; no answer is told so closely


class System:
    def __init__(self, row):
        number = lambda name: F(row[name]) if row[name] else None
        self.id = row["id"]
        self.rated, self.clean, self.sever = number("rated_mm"), number("clean_max_mm"), number("severance_mm")
        self.pierce = number("pierce_mm") or self.clean / 2
        self.low, self.high = number("output_min_a"), number("output_max_a")
        self.duty = [(F(a), F(x)) for a, x in re.findall(r"([\d.]+) A at ([\d.]+) %", row["duty"])]
        self.plates = [tuple(map(F, p)) for p in re.findall(
            r"(\d) phase ([\d.]+)-([\d.]+) V max ([\d.]+) A eff ([\d.]+) A", row["supplies"])]
        self.flow, self.pressure = number("air_flow_l_min"), number("air_pressure_bar")
        self.price = number(next(c for c in row if c.startswith("price_")))
        self.yes = {c: row[c] == "yes" for c in ("holds_gaps", "gouges", "mechanised")}
        self.points = sorted((float(a), float(x)) for a, x in self.duty)
        self.counts = dict(COUNTS)
        for name, t in re.findall(r"(\w+) ([\d.]+) mm", row["rated_other_metals"]):
            self.counts[name] = self.rated / F(t)

    def speed(self, t, output, limit):
        """mm/min in t mm of mild steel; None beyond what is severed."""
        share = float(output) / float(self.high)
        r, c, s = (float(x) * share for x in (self.rated, self.clean, self.sever))
        t = float(t)
        if t > s * (1 + 1e-9):
            return None
        halving = math.log(c / r)
        if t <= r:
            v = 500 * (r / t) ** min(1, math.log(2) / halving)
        elif t <= c:
            v = 500 * 2 ** -(math.log(t / r) / halving)
        else:
            v = 250 * 2 ** -(math.log(min(t, s) / c) / math.log(s / c))
        return min(v, limit)

    def allowed(self, output):
        """The duty cycle in %, log-log between the points, equal heat beyond."""
        points, i = self.points, float(output)
        near = points[0] if i <= points[0][0] else points[-1] if i >= points[-1][0] else None
        if near:
            return min(100.0, near[1] * (near[0] / i) ** 2)
        k = bisect_left([a for a, _ in points], i)
        (a, x), (b, y) = points[k - 1], points[k]
        return math.exp(math.log(x) + math.log(y / x) * math.log(i / a) / math.log(b / a))


def load_voltage(i):
    return 80 + 0.4 * i if i <= 165 else 130 + 0.1 * i


# ----------------------------------------------------------------- the checks

def against(need, have):
    return "met" if have >= need * SAME else "borderline" if have >= need * STEP * SAME else "falls short"


class Judge:
    """One visit put to one system; checks gathers verdict, need and have."""

    def __init__(self, v, s):
        self.v, self.s, self.checks = v, s, {}
        self.requirement, speed_sizes = v.deciding
        floors = {"maintenance": F(1), "mixed": F(3, 2), "production": F(2)}
        use = v.one("use")
        self.floor = floors.get(use, F(1))
        self.most = floors.get(use, F(2))
        if speed_sizes and self.floor < F(3, 2):
            self.floor, self.most = F(3, 2), max(self.most, F(3, 2))
        for rule in (self.clean, self.sever, self.pierce, self.bevel, self.abilities, self.supply, self.work,
                     self.breaker, self.cord, self.generator, self.air, self.money):
            rule()

    def say(self, rule, verdict, need=0, have=0):
        self.checks[rule] = [verdict, float(need), float(have)]

    def heaviest(self, *questions):
        """The heaviest piece told in mild steel, and whether every metal is told."""
        most, sure = None, bool(self.v.metals)
        for m in self.v.metals:
            told = [t for t in (self.v.piece(m, q) for q in questions) if t is not None]
            sure = sure and self.v.piece(m, questions[-1]) is not None and m in self.s.counts
            if told and m in self.s.counts:
                most = max(most if most is not None else F(0), max(told) * self.s.counts[m])
        return most, sure

    def hold(self, rule, least, most, have, sure):
        """A need that lies between least and most, or above where not all is told."""
        low = against(least, have)
        if low != "falls short" and not (sure and low == against(most, have)):
            low = "not known"
        self.say(rule, low, least, have)

    def clean(self):
        most, sure = self.heaviest("everyday-thickness", "thickest-clean")
        if most is None:
            return self.say("clean-cut", "not known", 0, self.s.rated)
        self.hold("clean-cut", most * self.floor, most * self.most, self.s.rated, sure)

    def sever(self):
        most, sure = self.heaviest("rare-thickest")
        if most is None:
            self.say("severance", "not known", 0, self.s.sever)
        elif most or not sure:
            self.hold("severance", most, most, self.s.sever, sure)

    def pierce(self):
        start = self.v.one("start")
        most, sure = self.heaviest("thickest-pierced")
        if start == "edge" or (start and most == 0 and sure):
            return
        if start is None or most is None:
            return self.say("pierce", "not known", 0, self.s.pierce)
        self.hold("pierce", most, most, self.s.pierce, sure)

    def bevel(self):
        features, have = self.v.several("features"), self.s.clean
        most, sure = self.heaviest("bevelled-thickness")
        angle = self.v.figure("bevel-angle")
        if "features" in self.v.told and ("bevels" not in features or (most == 0 and sure)):
            return
        if "features" not in self.v.told or not most:
            return self.say("bevel", "not known", 0, have)
        if angle is None:
            return self.hold("bevel", most, most, have, False)
        if angle > 60:
            return self.say("bevel", "falls short")
        slant = float(most) / math.cos(math.radians(float(angle)))
        self.hold("bevel", F(slant), F(slant), have, sure)

    def abilities(self):
        features, told = self.v.several("features"), "features" in self.v.told
        gaps = self.requirement == "across-gaps"
        for rule, asked, known, column in (
                ("gaps", gaps or "gaps" in features, gaps or told, "holds_gaps"),
                ("gouging", "gouging" in features, told, "gouges"),
                ("mechanised", self.v.one("guidance") == "mechanised", "guidance" in self.v.told, "mechanised")):
            if not known and not self.s.yes[column]:
                self.say(rule, "not known")
            elif known and asked:
                self.say(rule, "met" if self.s.yes[column] else "falls short")

    def supply(self):
        """self.fed is the plate used and the voltage there, None if not known."""
        self.fed = None
        phases, volts = self.v.one("supply-phase"), self.v.figure("supply-voltage")
        if phases is None or volts is None:
            hopeless = phases == "single" and all(p[0] != 1 for p in self.s.plates)
            self.unsuited = hopeless
            return self.say("supply", "falls short" if hopeless else "not known")
        root = math.sqrt(3)
        site = {"single": [(1, volts)],
                "three": [(3, volts), (1, volts), (1, F(float(volts) / root))],
                "both": [(3, volts), (1, volts), (1, F(float(volts) / root)), (3, F(float(volts) * root))]}[phases]
        best = (0, 0)
        for plate in self.s.plates:
            for n, u in site:
                if n != plate[0]:
                    continue
                grade = 2 if plate[1] * F("0.995") <= u <= plate[2] * F("1.005") else \
                    1 if plate[1] * F("0.9") <= u <= plate[2] * F("1.1") else 0
                rank = (grade, n if grade == 2 else 0)
                if grade and rank > best:
                    best, self.fed = rank, (plate, u)
        self.unsuited = self.fed is None
        self.say("supply", ("falls short", "borderline", "met")[best[0]])

    def work(self):
        """The output worked at, what it draws, and the busiest ten minutes."""
        s, v = self.s, self.v
        shares = [F(0)]
        regular, _ = self.heaviest("everyday-thickness", "thickest-clean")
        rare, _ = self.heaviest("rare-thickest")
        shares += [regular * self.floor / s.rated] if regular is not None else []
        shares += [rare / s.sever] if rare is not None else []
        pierced, _ = self.heaviest("thickest-pierced")
        shares += [pierced / s.pierce] if pierced is not None else []
        output = max(s.low, min(s.high, s.high * max(shares)))
        if self.fed:
            (n, low, _, largest, self.plate_effective), volts = self.fed
            i, full = float(output), float(s.high)
            self.largest, self.volts, self.root = float(largest), float(volts), math.sqrt(n)
            self.load = self.largest * (load_voltage(i) * i) / (load_voltage(full) * full) * float(low) / self.volts
            self.effective = self.load * math.sqrt(s.allowed(output) / 100)
            self.phases = n
        self.duty()

    def duty(self):
        s, v = self.s, self.v
        cuts, each = v.figure("busy-cuts"), v.figure("busy-length")
        full = s.allowed(s.high)
        if cuts == 0:
            return
        t, sure = self.heaviest("everyday-thickness")
        if cuts is None or each is None or not t:
            return self.say("duty", "not known", 0, full)
        if t > s.sever:
            return
        limit = {"guided": 2500, "mechanised": 7620}.get(v.one("guidance"), 1500)

        metres = float(cuts * each)

        def takes(output):
            return metres * 1000 / s.speed(t, output, limit) / 10 * 100

        need, have = takes(s.high), full
        verdict = against(need, have)
        if need > have:
            output = self.turned_down(t, takes)
            if output:
                need, have, verdict = takes(output), s.allowed(output), "met"
        if verdict != "falls short" and not sure:
            verdict = "not known"
        self.say("duty", verdict, need, have)

    def turned_down(self, t, takes):
        """The largest output at which the work fits, found by looking."""
        s = self.s
        least = max(float(s.low), float(s.high) * float(t) / float(s.sever))
        fits = lambda i: takes(i) <= s.allowed(i) * (1 + 1e-9)
        steps, full = 300, float(s.high)
        tried = [full * (least / full) ** (k / steps) for k in range(1, steps)] + [least]
        tried += [a for a, _ in s.points if least < a < full]  # it may fit in one point alone
        above = full
        for low in sorted(tried, reverse=True):
            if fits(low):
                for _ in range(60):
                    middle = math.sqrt(low * above)
                    low, above = (middle, above) if fits(middle) else (low, middle)
                return low
            above = low
        return None

    def breaker(self):
        if self.v.one("power-source") == "generator" or self.unsuited:
            return
        told = self.v.figure("breaker")
        if not self.fed or told is None:
            return self.say("breaker", "not known", self.effective if self.fed else 0)
        amps = float(told)
        limit = 2 * self.largest
        limit = next((b for b in (15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100) if b >= limit), limit)
        if amps < self.effective * (1 - 1e-9):
            verdict = "falls short"
        elif amps > limit or told < self.plate_effective or amps < self.load * (1 - 1e-9):
            verdict = "borderline"
        else:
            verdict = "met"
        self.say("breaker", verdict, self.effective, amps)

    CLASS5 = [(0.75, 26.0), (1, 19.5), (1.5, 13.3), (2.5, 7.98), (4, 4.95), (6, 3.30), (10, 1.91), (16, 1.21), (25, 0.780), (35, 0.554), (50, 0.386)]
    CARRIES = [(2.081, 15, 20), (3.309, 20, 25), (5.261, 30, 35), (8.367, 40, 50), (13.30, 55, 65), (21.15, 70, 85), (26.67, 85, 100), (33.63, 95, 115)]

    def cord(self):
        length, section = self.v.figure("cord-length"), self.v.figure("cord-section")
        if self.unsuited or length == 0:
            return
        if not self.fed or length is None or section is None:
            return self.say("cord", "not known", 0, 5)
        a = float(section)
        if a < 0.75:
            self.say("cord-load", "falls short")
        else:
            cautious, most = self.carried(a)
            verdict = "met" if self.effective <= cautious else "borderline" if self.effective <= most else "falls short"
            self.say("cord-load", verdict, self.effective, cautious)
        if not 0.75 <= a <= 50:
            return self.say("cord", "not known", 0, 5)
        ohm = straight(a, [(x, r * x) for x, r in self.CLASS5]) / a * (1 + 0.00393 * 50)
        lost = (2 if self.phases == 1 else self.root) * self.load * ohm * float(length) / 1000 / self.volts * 100
        if lost > 100:
            return self.say("cord", "falls short", 100, 5)
        self.say("cord", "met" if lost <= 5 else "falls short", lost, 5)

    def carried(self, a):
        if a <= self.CARRIES[0][0]:
            share = a / self.CARRIES[0][0]
            return 15 * share, 20 * share
        a = min(a, self.CARRIES[-1][0])
        return tuple(straight(a, [(row[0], row[k]) for row in self.CARRIES]) for k in (1, 2))

    def generator(self):
        rating = self.v.figure("generator-rating")
        if self.v.one("power-source") not in ("generator", "both") or self.unsuited:
            return
        if not self.fed:
            return self.say("generator", "not known")
        need = 1.25 * self.root * self.volts * self.load / 1000
        if rating is None:
            return self.say("generator", "not known", need)
        left = lambda h: float(rating) * (density(h) if h > 1000 else 1)
        self.at_altitude("generator", need, left)

    def at_altitude(self, rule, need, have):
        """At the altitude told, else the same at the sea and at 1500 m."""
        altitude = self.v.figure("altitude")
        if altitude is not None:
            got = have(float(altitude))
            return self.say(rule, against(F(need), F(got)), need, got)
        low, high = (against(F(need), F(have(h))) for h in (0, 1500))
        self.say(rule, low if low == high else "not known", need, have(0))

    def air(self):
        v, s = self.v, self.s
        drier = v.one("air-drier")
        if drier is None:
            self.say("air-dryness", "not known")
        elif drier != "no-compressor":
            self.say("air-dryness", {"none": "falls short", "separator": "borderline"}.get(drier, "met"))
        delivery, line = v.figure("air-delivery"), v.figure("air-pressure")
        if drier == "no-compressor":
            return self.say("air-flow", "falls short", s.flow, 0)
        if delivery is None:
            self.say("air-flow", "not known", s.flow)
        else:
            self.at_altitude("air-flow", float(s.flow), lambda h: min(float(delivery), float(delivery) * pressure(h) / 100))
        if line is None:
            return self.say("air-pressure", "not known", s.pressure)
        bore, length = v.figure("hose-bore"), v.figure("hose-length")
        there = self.through(line, F(6) if bore is None else bore, F(30) if length is None else length)
        if bore is not None and length is not None:
            return self.say("air-pressure", *there)
        bare = against(s.pressure, line)
        self.say("air-pressure", bare if bare == there[0] else "not known", s.pressure, line)

    def through(self, line, bore, length):
        altitude = self.v.figure("altitude")
        loss = hose(float(self.s.flow), float(bore), float(length), float(line), pressure(float(altitude or 0)))
        if loss is None:
            return "falls short", self.s.pressure, line / 2
        need = self.s.pressure + 2 * F(loss)
        return against(need, line), need, line

    def money(self):
        budget = self.v.told.get("budget")
        if budget is not None and self.s.price is not None:
            self.say("budget", "met" if self.s.price <= budget else "falls short", self.s.price, budget)

    HARD = {"clean-cut", "severance", "pierce", "bevel", "gaps", "gouging", "mechanised", "supply", "duty"}
    SITE = {"breaker", "cord", "cord-load", "generator", "air-flow", "air-pressure", "air-dryness"}

    def status(self):
        has = lambda rules, verdict: any(c[0] == verdict for r, c in self.checks.items() if r in rules)
        if has(self.HARD, "falls short"):
            return "falls short"
        if has(self.HARD, "borderline"):
            return "borderline"
        return "fits once the site is changed" if has(self.SITE, "falls short") else "fits"


def straight(x, points):
    """Straight between points; x lies among them."""
    k = max(1, bisect_left([p[0] for p in points], x))
    (a, y), (b, z) = points[k - 1], points[k]
    return y + (z - y) * (x - a) / (b - a)


def layer(h):
    """Temperature over that at sea level, at a geometric height in m."""
    return 1 - 0.0065 * (6356766 * h / (6356766 + h)) / 288.15


def pressure(h):
    return 101.325 * layer(h) ** (9.80665 / (287.05287 * 0.0065))


def density(h):
    return layer(h) ** (9.80665 / (287.05287 * 0.0065) - 1)


def hose(flow, bore, length, inlet, local):
    """bar lost in a smooth hose; 0 where the flow is too slow to matter, None where it chokes."""
    d, rt = bore / 1000, 287.05 * 293.15
    g = flow / 1000 / 60 * 1e5 / rt / (math.pi * (d / 2) ** 2)
    re_number = g * d / 1.82e-5
    if not 5000 <= re_number <= 1e8:
        return 0.0
    f = 0.25 / math.log10(1.5e-6 / (3.7 * d) + 5.74 / re_number ** 0.9) ** 2
    p1 = inlet * 1e5 + local * 1e3
    p2_squared = p1 ** 2 - f * length / d * g ** 2 * rt
    if p2_squared < (p1 / 2) ** 2:
        return None
    return (p1 - math.sqrt(p2_squared)) / 1e5


# ------------------------------------------------------------ cost of a metre

def sure(x):
    return (x, x, x)


def times(s, k):
    return tuple(k * x for x in s)


PLASMA_HABITS = dict(setup=(2, 5, 15), starting=(.3, .7, 2), cleaning=(.3, 1, 2), tended=sure(1))
HABITS = {
    "oxy-acetylene": dict(setup=(5, 15, 40), starting=(5, 10, 20), cleaning=(1, 2, 4), tended=sure(1)),
    "oxy-propane": dict(setup=(5, 15, 40), starting=(8, 20, 40), cleaning=(1, 2, 4), tended=sure(1)),
    "abrasive-disc": dict(setup=(3, 10, 30), starting=sure(0), cleaning=(.2, .7, 2), tended=sure(1), power=(.7, 1.1, 2.2)),
    "band-saw": dict(setup=(30, 90, 240), starting=sure(0), cleaning=(.1, .4, 1), tended=(.2, .5, 1), power=(.7, 1.5, 3)),
    "shear": dict(setup=(3, 8, 20), starting=sure(0), cleaning=(.05, .2, .5), tended=sure(1), power=(.3, .5, .8)),
    "nibbler": dict(setup=(3, 8, 20), starting=sure(0), cleaning=(.1, .4, 1), tended=sure(1), power=(.4, .7, 1.2)),
    "other-plasma": PLASMA_HABITS, "plasma": PLASMA_HABITS,
}
FLAME = [  # mm; mm/min slow, fast; ft3/h of cutting oxygen, acetylene, propane, each low and high
    (3.17, 508, 762, 45, 55, 7, 9, 3, 10), (6.35, 406, 660, 50, 93, 9, 11, 5, 12), (9.52, 381, 610, 60, 115, 10, 12, 5, 15),
    (12.7, 305, 559, 66, 125, 10, 13, 5, 15), (19.05, 305, 508, 117, 143, 12, 15, 6, 18), (25.4, 229, 457, 130, 160, 13, 16, 6, 18),
    (38.1, 152, 305, 143, 178, 15, 18, 8, 20), (50.8, 152, 330, 185, 231, 16, 20, 8, 20), (76.2, 102, 254, 240, 290, 19, 23, 9, 22),
    (101.6, 102, 203, 293, 388, 21, 26, 9, 24)]
FOOT_AN_HOUR = 28.316846592 / 60
DISC = {"mild-steel": sure(1), "galvanised-steel": sure(1), "aluminium": sure(1), "stainless": (.7, .75, .8)}
SAW = {"mild-steel": (800, 3200, 7700), "galvanised-steel": (800, 3200, 7700), "stainless": (325, 1300, 2600), "aluminium": (2425, 9700, 26000)}
ENDS = {"shear": {"mild-steel": 3.4, "galvanised-steel": 3.4, "stainless": 2.8, "aluminium": 3.4},
        "nibbler": {"mild-steel": 3.2, "galvanised-steel": 3.2, "stainless": 2.1, "aluminium": 4.8}}
FLAMES = ("oxy-acetylene", "oxy-propane")


def can(way, metal, t):
    """Whether a way cuts t mm of a metal, as far as figures are held."""
    if way in FLAMES:
        return metal in ("mild-steel", "galvanised-steel") and 3.17 * .94 <= t <= 101.6 * (1 + 1e-9)
    if way in ENDS:
        return metal in ENDS[way] and t <= ENDS[way][metal] * 1.06
    if way == "abrasive-disc":
        return metal in DISC and t <= 12 * 1.06
    return metal in SAW if way == "band-saw" else way != "other"


def disc_speed(t, metal):
    rows = [(3, 300, 600), (6, 150, 300), (11, 70, 150)]
    a, b = rows[:2] if t <= 6 else rows[1:]
    share = math.log(max(t, 3) / a[0]) / math.log(b[0] / a[0])
    slow, fast = (math.exp(math.log(a[k]) + share * math.log(b[k] / a[k])) for k in (1, 2))
    return tuple(x * k for x, k in zip((slow, math.sqrt(slow * fast), fast), DISC[metal]))


def straightening(way, t):
    if way in FLAMES:
        return (.5, 2, 5) if t < 6 else (0, .3, 1)
    if way in ("plasma", "other-plasma"):
        return (0, .4, 1.5) if t < 3 else (0, .1, .4)
    return sure(0)


class Costs:
    """Figures as low, likely, high by name; names of one way start with it."""

    def __init__(self, v, prices):
        self.v, self.prices = v, prices
        self.figures = {"share": (.5, .7, .9), "length": (.3, .5, 1.5), "wage": prices["labour"]}
        each = v.figure("busy-length")
        if each:
            self.figures["length"] = times((.8, 1, 1.2), float(each))
        if v.labour():
            self.figures["wage"] = times((.9, 1, 1.1), float(v.labour()))
        week = v.week()
        self.metres_told, self.yearly = week is not None, bool(week)
        if week:
            m = float(week)
            self.figures["metres"] = (m * 44 * .8, m * 46, m * 48 * 1.2)
        self.figures.update({k: prices[k] for k in prices if k not in ("labour", "interest", "years")})

    def person(self, way, t):
        h = HABITS[way]
        cleaning = sure(0) if self.v.several("edge-next") == ["scrap"] else h["cleaning"]
        own = dict(h, cleaning=cleaning, straightening=straightening(way, t))
        self.figures.update({(way, k): x for k, x in own.items()})

    def plasma(self, way, t, speed, amps, flow):
        self.person(way, t)
        arc = load_voltage(amps) * amps / 1000
        own = dict(speed=speed, power=(arc / .9, arc / .85, arc / .75), idle=(.03, .1, .3), flow=flow, after=(5, 12, 25))
        self.figures.update({(way, k): x for k, x in own.items()})

    def today(self, way, metal, t):
        """Fills in one of today's ways; returns what a metre costs as a function."""
        if way == "sent-out":
            bill = self.v.billed("sent-out-a-year")
            if bill is not None and self.yearly:
                self.figures["bill"] = times((.9, 1, 1.1), float(bill))
                return lambda x: x["bill"] / x["metres"]
            return lambda x: x["sent-out"] + x["transport"] / x["transport-load"]
        if way == "other-plasma":
            self.plasma(way, t, (250, 350, 500), min(max(t / .25, 20), 125), (100, 150, 220))
            return lambda x: self.metre(x, way, t)
        self.person(way, t)
        if way in FLAMES:
            self.flame(way, t)
        else:
            self.figures[way, "speed"] = {"shear": (2000, 4000, 6000), "nibbler": (1000, 1500, 2000)}.get(way) or (
                disc_speed(t, metal) if way == "abrasive-disc" else times(SAW[metal], 1 / t))
        return lambda x: self.metre(x, way, t)

    def flame(self, way, t):
        t = min(max(t, 3.17), 101.6)
        row = [straight(t, [(r[0], r[k]) for r in FLAME]) for k in range(9)]
        pair = lambda k: (row[k], (row[k] + row[k + 1]) / 2, row[k + 1])
        self.figures[way, "speed"] = pair(1)
        bill = self.v.billed("gas-a-year")
        self.gas_bill = bill is not None and self.yearly
        if self.gas_bill:
            self.figures["bill"] = times((.9, 1, 1.1), float(bill))
            return
        self.figures[way, "oxygen"] = times(pair(3), FOOT_AN_HOUR)
        self.figures[way, "fuel"] = times(pair(5 if way == "oxy-acetylene" else 7), FOOT_AN_HOUR)
        self.figures[way, "ratio"] = (1.1, 1.2, 1.3) if way == "oxy-acetylene" else (3.5, 3.9, 4.3)

    def metre(self, x, way, t):
        burning = 1000 / x[way, "speed"] / 60
        setting, heating = (x[way, k] / 3600 / x["length"] for k in ("setup", "starting"))
        cutting = burning / x["share"]
        minutes = x[way, "cleaning"] + x[way, "straightening"]
        total = x["wage"] * (cutting * x[way, "tended"] + setting + heating + minutes / 60)
        if way in FLAMES:
            return total + self.gas(x, way, burning, heating)
        if way in ("plasma", "other-plasma"):
            arc = burning + heating
            flowing = arc + x[way, "after"] / 3600 / x["length"]
            kwh = x[way, "power"] * arc + x[way, "idle"] * max(0, cutting + setting - burning)
            kwh += x[way, "flow"] / 1000 * x["air-power"] * flowing
            worn = 1 / x["length"] / x["set-starts"] + burning / x["set-hours"]
            return total + kwh * x["electricity"] + worn * x["consumable-set"]
        total += x[way, "power"] * burning * x["electricity"]
        if way in ENDS:
            return total + x["knives"] / x["knives-life"]
        tool, life = ("disc", "disc-life") if way == "abrasive-disc" else ("blade", "blade-life")
        return total + t * 10 / x[life] * x[tool]

    def gas(self, x, way, burning, heating):
        if self.gas_bill:
            return x["bill"] / x["metres"]
        cubic = 60 / 1000  # l/min over hours
        fuel = x["acetylene" if way == "oxy-acetylene" else "propane"] + x[way, "ratio"] * x["oxygen"]
        total = x[way, "oxygen"] * burning * cubic * x["oxygen"] + x[way, "fuel"] * (burning + heating) * cubic * fuel
        return total + (x["cylinders"] / x["metres"] if self.yearly else 0)

    def spreads(self, f):
        """Likely, and the root of the squares of what each figure alone does, for
        every result in the list that f gives."""
        x = {k: s[1] for k, s in self.figures.items()}
        base = f(x)
        down, up = [0.0] * len(base), [0.0] * len(base)
        for k, (low, likely, high) in self.figures.items():
            if low == high:
                continue
            x[k] = low
            lows = f(x)
            x[k] = high
            highs = f(x)
            x[k] = likely
            for n, b in enumerate(base):
                one, other = lows[n] - b, highs[n] - b
                down[n] += min(one, other, 0) ** 2
                up[n] += max(one, other, 0) ** 2
        return [[b - math.sqrt(d), b, b + math.sqrt(u)] for b, d, u in zip(base, down, up)]


def account(v, prices, systems):
    cuts = []
    for m in v.metals:
        t = v.piece(m, "everyday-thickness")
        t = v.piece(m, "thickest-clean") if t is None else t
        if t:
            cuts.append((m, float(t), t))
    out = {"ways": [], "offers": {}}
    fuel = v.billed("fuel-gas")
    names = {"oxy-fuel": "oxy-propane" if fuel == ["propane"] else "oxy-acetylene"}
    chosen, held, basis = (cuts or [None])[0], None, Costs(v, prices)
    for told in v.several("today") if cuts else []:
        way, mine = names.get(told, told), Costs(v, prices)
        cut = next((c for c in cuts if can(way, c[0], c[1])), None)
        f = cut and mine.today(way, cut[0], cut[1])
        out["ways"].append(f and floor0(mine.spreads(lambda x: [f(x)])[0]))
        if f and not held:
            chosen, held, basis = cut, f, mine
    for s in systems if cuts else []:
        k = s.counts.get(chosen[0])
        limit = {"guided": 2500, "mechanised": 7620}.get(v.one("guidance"), 1500)
        speed = k and s.speed(chosen[2] * k, s.high, limit)
        if not speed:
            continue
        mine = Costs(v, prices)
        mine.figures, mine.gas_bill = dict(basis.figures), getattr(basis, "gas_bill", False)
        hand = (.75 * speed, speed, max(speed, min(1.15 * speed, limit)))
        mine.plasma("plasma", chosen[1], hand, float(s.high), sure(float(s.flow)))
        f = offered(mine, chosen[1], held)
        metre, *saves = mine.spreads(f)
        offer = {"metre": floor0(metre)}
        if held:
            offer["saves"] = saves[0]
            if mine.yearly:
                offer["year"] = saves[1]
        out["offers"][s.id] = offer
    return out


def offered(costs, t, held):
    """A metre with the system, and what it saves on a metre and in a year."""
    def f(x):
        new = costs.metre(x, "plasma", t)
        saved = held(x) - new if held else 0
        return [new, saved, saved * x["metres"] if costs.yearly else 0]
    return f


def floor0(s):
    return [max(s[0], 0), s[1], s[2]]


# ------------------------------------------------------------------- the rest

def table(path):
    with open(path, encoding="utf-8") as f:
        return list(csv.DictReader(line for line in f if not line.startswith("#")))


def main():
    systems = [System(row) for row in table(sys.argv[1])]
    prices = {r["item"]: tuple(float(r[k]) for k in ("low", "likely", "high"))
              for r in table(sys.argv[2]) if r["low"] and r["item"] not in ("currency", "date", "place")}
    for line in sys.stdin:
        v = Visit(json.loads(line))
        v.deciding = deciding(v)
        judged = {s.id: Judge(v, s) for s in systems}
        print(json.dumps({"decides": v.deciding[0],
                          "systems": {k: {"status": j.status(), "checks": j.checks} for k, j in judged.items()},
                          "cost": account(v, prices, systems)}))


if __name__ == "__main__":
    main()
