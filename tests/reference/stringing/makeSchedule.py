"""Writes schedule88.csv: an invented scale of a grand of about two metres, no maker's. Run: python3 makeSchedule.py > schedule88.csv

Bass bridge A0-F#2: ten single strings, then pairs, wound with copper. Long bridge G2-C8: three plain strings a note, in half sizes
of the metric series. Lengths run nearly straight in their logarithm.
"""
import math

NAMES = ["C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"]


def name(midi):
    return f"{NAMES[midi % 12]}{midi // 12 - 1}"


print("note,strings,speaking_length_mm,wire_diameter_mm,core_diameter_mm,wrap,wire_grade,bridge")
for midi in range(21, 43):
    share = (midi - 21) / 21
    length = 1385 * (1085 / 1385) ** share
    whole = 5.6 * (1.95 / 5.6) ** share
    core = [1.5, 1.4, 1.3, 1.2, 1.1, 1.0][min(5, int(share * 6))]
    print(f"{name(midi)},{1 if midi < 31 else 2},{length:.0f},{whole:.2f},{core},copper,EN 10270-1 SM,bass")
for midi in range(43, 109):
    share = (midi - 43) / 65
    length = 1290 * (52 / 1290) ** share * math.exp(0.1 * math.sin(math.pi * share))
    wire = 0.775 + 0.025 * ((108 - midi) // 5)
    print(f"{name(midi)},3,{length:.1f},{wire:.3f},,,ASTM A228,long")
