"""Stress factor of rectangular holes with rounded corners, by plane elasticity.

Shares nothing with the fitted formula: the outside of the hole is mapped on the
outside of a circle (Theodorsen's rule), and the two complex potentials of
Muskhelishvili are sums of powers whose weights leave the rim free of traction.
The pull is across the longer side. Prints b/a, r/b, factor, and the greatest
traction left on the rim, in parts of the pull. Holes less than about half as high
as long do not settle. Needs numpy; half a minute.
"""
import numpy as np

POINTS, TERMS = 2048, 300


def rim(a, b, r):
    """Distance of the rim from the centre, as a function of the direction."""
    def rho(angle):
        c, s = np.abs(np.cos(angle)), np.abs(np.sin(angle))
        side, top = a / np.maximum(c, 1e-15), b / np.maximum(s, 1e-15)
        x, y = a - r, b - r
        along = c * x + s * y
        arc = along + np.sqrt(np.maximum(along ** 2 - (x * x + y * y - r * r), 0))
        return np.where(side * s <= y, side, np.where(top * c <= x, top, arc))
    return rho


def outside_map(rho):
    """Powers and weights of the map from outside the unit circle to outside the hole."""
    turn = 2 * np.pi * np.arange(POINTS) / POINTS
    powers = np.fft.fftfreq(POINTS, 1 / POINTS).astype(int)
    angle = turn.copy()
    for _ in range(20000):
        c = np.fft.fft(np.log(rho(angle))) / POINTS
        f = np.where(powers < 0, 2 * c, 0)
        f[0] = c[0]
        value = np.fft.ifft(f) * POINTS
        step = turn + value.imag - angle
        angle = angle + step / 2
        if np.max(np.abs(step)) < 1e-10:
            break
    weights = np.fft.fft(np.exp(1j * turn + value)) / POINTS
    keep = (powers <= 1) & (powers >= -TERMS)
    return turn, powers[keep], weights[keep]


def factor(a, b, r):
    turn, powers, weights = outside_map(rim(a, b, r))
    s = np.exp(1j * turn)
    z = sum(w * s ** k for w, k in zip(weights, powers))
    dz = sum(w * k * s ** (k - 1) for w, k in zip(weights, powers) if k)
    size = weights[powers == 1][0].real
    far, far2 = 0.25 * size, 0.5 * size  # a pull of 1 across the longer side, here upward
    n = np.arange(1, TERMS + 1)
    one = s[:, None] ** -n
    slope = -n * s[:, None] ** (-n - 1)
    columns = np.concatenate([one + (z / np.conj(dz))[:, None] * np.conj(slope), np.conj(one), np.ones((POINTS, 1))], 1)
    rest = -(far * s + z * far / np.conj(dz) + np.conj(far2 * s))
    system = np.concatenate([columns.real, columns.imag])
    right = np.concatenate([rest.real, rest.imag])
    weight = np.linalg.lstsq(system, right, rcond=None)[0]
    hoop = 4 * np.real((far + slope @ weight[:TERMS]) / dz)
    return hoop.max(), np.max(np.abs(system @ weight - right))


for side, q in [(1, .2), (1, .5), (1, .75), (1, .99999), (.8, .2), (.8, .5), (.8, 1), (.5, .4), (.5, 1)]:
    k, left = factor(1, side, q * side)
    print("%.1f %.2f %.3f %.0e" % (side, q, k, left))
