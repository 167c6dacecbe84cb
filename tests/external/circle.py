"""The fitted circle by numpy's least squares, and by its Fourier transform where steps are equal."""

import random

import numpy as np

from bench import Group, sure, value


def circle(bench):
    group = Group("runout, numpy lstsq and rfft")
    draw = random.Random(2)
    for trial in range(80):
        count, equal = draw.randint(4, 12), trial % 2 == 0
        if equal:
            degrees = [round(360 * i / count, 6) for i in range(count)]
        else:
            gaps = [draw.uniform(1, 2) for _ in range(count)]
            degrees = [round(360 * sum(gaps[:i]) / sum(gaps), 6) for i in range(count)]
        off, high = draw.uniform(0, 0.2), draw.uniform(0, 360)
        heights = [round(0.3 + off * np.cos(np.radians(d - high)) + draw.gauss(0, 0.003), 6) for d in degrees]
        found = bench.ask(bench="runout", readings=[{"angle": f"{d:.6f} °", "reading": sure(h, "mm", 6)}
                                                    for d, h in zip(degrees, heights)])
        angles = np.radians(degrees)
        columns = np.column_stack([np.ones(count), np.cos(angles), np.sin(angles)])
        mean, a, b = np.linalg.lstsq(columns, np.array(heights), rcond=None)[0]
        group.near("mean", value(found["mean"]), mean, 1e-9)
        group.near("off centre", value(found["off_centre"]), np.hypot(a, b), 1e-9)
        if found["high_spot"] is not None:
            apart = (value(found["high_spot"]) - np.degrees(np.arctan2(b, a)) + 180) % 360 - 180
            group.near("high spot", apart, 0.0, 1e-6)
        left = np.array(heights) - columns @ [mean, a, b]
        scatter = np.sqrt(left @ left / (count - 3)) if count > 3 else 0.0
        spread = scatter**2 * np.linalg.inv(columns.T @ columns)
        along = np.array([0, a, b]) / np.hypot(a, b)
        group.near("its uncertainty", float(found["off_centre"]["u"]), np.sqrt(along @ spread @ along), 1e-8)
        if equal:
            once = np.fft.rfft(heights)[1]
            group.near("off centre by transform", value(found["off_centre"]), 2 * abs(once) / count, 1e-7)
    return group.done()
