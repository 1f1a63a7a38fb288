#!/usr/bin/python3
"""Writes solvepnp.json: cameras found by OpenCV's solvePnP from marks of the North
American rink. Needs Debian's python3-opencv (4.6.0), 155 packages with what it pulls
in: too heavy for every test run, so its answers are kept here.

    /usr/bin/python3 solvepnp.py > solvepnp.json

The rink's numbers are written down here once more, from the rule book, so that the
landmarks are checked too. OpenCV's camera looks along +z with x right and y down.
"""
import json
import math

import cv2
import numpy as np

FT = 0.3048
goal, blue, spot, neutral = 89 * FT, 25.5 * FT, 69 * FT, 20 * FT  # from centre ice; blue to its middle

post = 3 * FT + 2.375 / 2 * 0.0254  # the goal is 6 ft clear, of pipe of 2 3/8 in


def half_width(x):
    """Of the ice, 200 x 85 ft with corners of 28 ft."""
    d = abs(x) - 72 * FT
    return 42.5 * FT if d <= 0 else 14.5 * FT + math.sqrt((28 * FT) ** 2 - d * d)


marks = {"centre-spot": (0, 0, 0)}
for side, s in (("bench", -1), ("box", 1)):
    marks["red-line:" + side] = (0, s * half_width(0), 0)
    for end, e in (("A", -1), ("B", 1)):
        marks[f"{end}:post-{side}:foot"] = (e * goal, s * post, 0)
        marks[f"{end}:post-{side}:top"] = (e * goal, s * post, 4 * FT)
        marks[f"{end}:goal-line:{side}"] = (e * goal, s * half_width(goal), 0)
        marks[f"{end}:blue-line:{side}"] = (e * blue, s * half_width(blue), 0)
        marks[f"{end}:spot-{side}"] = (e * spot, s * 22 * FT, 0)
        marks[f"{end}:neutral-{side}"] = (e * neutral, s * 22 * FT, 0)

W, H, SENSOR = 6000, 4000, 36.0


def look(eye, target, roll):
    f = np.subtract(target, eye)
    f = f / np.linalg.norm(f)
    right = np.cross(f, [0, 0, 1])
    right = right / np.linalg.norm(right)
    up = np.cross(right, f)
    c, s = math.cos(roll), math.sin(roll)
    right, up = c * right + s * up, c * up - s * right
    return np.array([right, -up, f])


rng = np.random.default_rng(20)
cases = []
for i in range(60):
    noise = (0.0, 1.0)[i % 2]
    x = rng.uniform(15, 21) * rng.choice([-1, 1])
    back = rng.uniform(0.1, 0.25)
    eye = np.array([x, -(42.5 * FT + back) * rng.choice([-1, 1]), rng.uniform(1.3, 1.7)])
    focal = float(rng.choice([24, 35, 50]))
    target = (rng.uniform(-5, 5) + math.copysign(12, x), rng.uniform(-2, 2), 0.5)
    k = focal / SENSOR * W
    K = np.array([[k, 0, W / 2], [0, k, H / 2], [0, 0, 1]])
    R = look(eye, target, rng.uniform(-0.05, 0.05))
    seen = {}
    for name, p in marks.items():
        v = R @ (np.array(p) - eye)
        if v[2] > 0.5:
            u = K @ (v / v[2])
            if 20 < u[0] < W - 20 and 20 < u[1] < H - 20:
                seen[name] = u[:2] + noise * rng.standard_normal(2)
    if len(seen) < 7:
        continue
    obj = np.array([marks[n] for n in seen], dtype=np.float64)
    img = np.array(list(seen.values()), dtype=np.float64)
    ok, r, t = cv2.solvePnP(obj, img, K, None, flags=cv2.SOLVEPNP_SQPNP)
    r, t = cv2.solvePnPRefineLM(obj, img, K, None, r, t)
    M = cv2.Rodrigues(r)[0]
    c = (-M.T @ t).ravel()
    cases.append({
        "focal_mm": focal, "noise_px": noise,
        "marks": [{"landmark": n, "x_px": u[0], "y_px": u[1]} for n, u in seen.items()],
        "eye_m": c.tolist(), "forward": M[2].tolist(), "right": M[0].tolist(),
    })
print(json.dumps({"opencv": cv2.__version__, "pixels": [W, H], "sensor_mm": SENSOR, "cases": cases}, indent=1))
