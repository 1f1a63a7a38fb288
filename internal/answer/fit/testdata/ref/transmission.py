"""Transmissions by python3-shapely, straight from the definition.

Both hole outlines are projected along u onto the pupil's own plane, and an
outline limits only the pupil points behind it. It shares nothing with the
package, which works on the rink face and with exact arcs. Arcs are chords
here, 1024 a quarter turn: T is right to 1e-6.

    /usr/bin/python3 transmission.py > ../transmission.csv      (shapely 1.8.5)
"""
import math
import random

from shapely.geometry import Polygon

QUARTER = 1024


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def outline(w, h, r):
    pts = []
    for k, (sx, sy) in enumerate([(1, 1), (-1, 1), (-1, -1), (1, -1)]):
        cx, cy = sx * (w / 2 - r), sy * (h / 2 - r)
        for i in range(QUARTER + 1):
            q = math.pi / 2 * (k + i / QUARTER)
            pts.append((cx + r * math.cos(q), cy + r * math.sin(q)))
    return pts


def transmission(c, nose, pan, tilt, fx, fy):
    sp, cp, st, ct = math.sin(pan), math.cos(pan), math.sin(tilt), math.cos(tilt)
    axis = (sp * ct, st, cp * ct)
    right = (cp, 0, -sp)
    up = (-sp * st, ct, -cp * st)
    u = tuple(a + fx * b + fy * d for a, b, d in zip(axis, right, up))
    if u[2] <= 0:
        return 0.0
    pupil = tuple(n - c["depth"] * a for n, a in zip(nose, axis))
    disc = Polygon([(c["pupil"] / 2 * math.cos(i * math.pi / 2 / QUARTER), c["pupil"] / 2 * math.sin(i * math.pi / 2 / QUARTER)) for i in range(4 * QUARTER)])

    def seen(z):
        """The outline at depth z, projected along u onto the pupil's plane."""
        pts = []
        for x, y in outline(c["w"], c["h"], c["r"]):
            v = (x - pupil[0], y - pupil[1], z - pupil[2])
            k = dot(v, axis) / dot(u, axis)
            q = tuple(a - k * b for a, b in zip(v, u))
            pts.append((dot(q, right), dot(q, up)))
        return Polygon(pts).buffer(0)

    def behind(z):
        """The half-plane of the pupil's plane behind depth z: pupil z + g . w <= z."""
        g = (right[2], up[2])
        n = math.hypot(*g)
        if n < 1e-15:
            return big if pupil[2] <= z else Polygon()
        e = (g[0] / n, g[1] / n)
        far = (z - pupil[2]) / n
        s = 10.0
        p, q = (e[0] * far, e[1] * far), (-e[1], e[0])
        return Polygon([(p[0] + q[0] * s, p[1] + q[1] * s), (p[0] - q[0] * s, p[1] - q[1] * s), (p[0] - q[0] * s - e[0] * s, p[1] - q[1] * s - e[1] * s), (p[0] + q[0] * s - e[0] * s, p[1] + q[1] * s - e[1] * s)])

    big = Polygon([(-9, -9), (9, -9), (9, 9), (-9, 9)])
    left = disc
    for z in (0.0, -c["t"]):
        lost = left.intersection(behind(z)).difference(seen(z))
        left = left.difference(lost)
    return left.area / disc.area


def main():
    rnd = random.Random(20140)
    print("w,h,r,t,nose,pupil,depth,x,y,z,pan,tilt,fx,fy,transmission")
    done = partly = 0
    while done < 240:
        c = {"w": rnd.uniform(0.08, 0.2), "h": rnd.uniform(0.08, 0.2), "t": rnd.uniform(0.004, 0.03)}
        c["r"] = min(c["w"], c["h"]) / 2 * rnd.random() ** 2
        c["nose"] = rnd.uniform(0.03, 0.13)
        c["pupil"] = c["nose"] * rnd.uniform(0.1, 1)
        c["depth"] = rnd.choice([0, 0.003, rnd.uniform(0, 0.12)])
        pan, tilt = rnd.uniform(-1.3, 1.3), rnd.uniform(-1.1, 1.1) * rnd.choice([0, 1])
        cos = math.cos(pan) * math.cos(tilt)
        sin = math.sqrt(1 - cos * cos)
        z = -c["nose"] / 2 * sin - rnd.choice([0, rnd.uniform(0, 0.03)])
        k = (-z + c["depth"]) / cos
        x = -math.sin(pan) * math.cos(tilt) * k * rnd.uniform(0.3, 1.2) + rnd.uniform(-0.03, 0.03)
        y = -math.sin(tilt) * k * rnd.uniform(0.3, 1.2) + rnd.uniform(-0.03, 0.03)
        fx, fy = rnd.uniform(-0.6, 0.6), rnd.uniform(-0.6, 0.6)
        t = transmission(c, (x, y, z), pan, tilt, fx, fy)
        if not 0.001 < t < 0.999:
            if rnd.random() < 0.9:
                continue
        else:
            partly += 1
        done += 1
        print(",".join(repr(v) for v in (c["w"], c["h"], c["r"], c["t"], c["nose"], c["pupil"], c["depth"], x, y, z, pan, tilt, fx, fy, t)))


main()
