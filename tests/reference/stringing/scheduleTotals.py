"""The pull of schedule88.csv, worked out from textbook formulas without any of the program's code. Run: python3 scheduleTotals.py

Plain wire T = pi*rho*(f*L*d)^2; a wound string's mass is its core's and, turn by turn, its wrap's: in one metre lie 1/w turns of
wire of diameter w, each as long as the circle through the wrap's middle. Python 3, 64-bit numbers. It checks arithmetic, units and
the reading of the file; it says nothing about the physics.
"""
import csv
import math
import os

STEPS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
STEEL, COPPER = 7850.0, 8930.0


def frequency(note, a4):
    sharps = note.count("#")
    octave = int(note[1 + sharps :])
    return a4 * 2 ** ((STEPS[note[0]] + sharps - 9) / 12 + octave - 4)


def pull(row, a4):
    f, length = frequency(row["note"], a4), float(row["speaking_length_mm"]) / 1000
    whole = float(row["wire_diameter_mm"]) / 1000
    if not row["core_diameter_mm"]:
        return math.pi * STEEL * (f * length * whole) ** 2
    core = float(row["core_diameter_mm"]) / 1000
    wire = (whole - core) / 2
    wrap_volume = (1 / wire) * math.pi * (core + wire) * math.pi * wire**2 / 4
    mass = STEEL * math.pi * core**2 / 4 + COPPER * wrap_volume
    return mass * (2 * length * f) ** 2


with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "schedule88.csv"), newline="") as file:
    rows = list(csv.DictReader(file))
for a4 in (440, 435):
    bass = math.fsum(int(r["strings"]) * pull(r, a4) for r in rows if r["bridge"] == "bass")
    long = math.fsum(int(r["strings"]) * pull(r, a4) for r in rows if r["bridge"] == "long")
    print(f"A4 {a4}: bass {bass:.6f} N, long {long:.6f} N, all {bass + long:.6f} N, strings {sum(int(r['strings']) for r in rows)}")
for note in ("A0", "G1", "G2", "A4", "C8"):
    row = next(r for r in rows if r["note"] == note)
    print(f"{note}: one string {pull(row, 440):.9f} N")
