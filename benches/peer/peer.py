"""The reading chain of `dentwright read` in OpenCV, scikit-image, SciPy and NumPy. For comparison only.

Usage: python3 peer.py CAPTURE --out DIR [--orders region|pixel]

Screen captures only; body lines are not looked for, nothing is explained, bad photos are not caught. Everything
else is the same work: decode, response, tags, poses, phases, region unwrapping, slopes, integration (twice, as
geometry and shape are iterated), intended shape, doubt, spots, maps to disk. Prints seconds per stage as JSON.
"""

import time

STARTED = time.perf_counter()

import argparse
import json
import resource
import tomllib
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import cv2
import numpy as np
from PIL import Image
from scipy import fft, linalg, ndimage
from scipy.sparse.linalg import LinearOperator, cg
from skimage import measure, restoration

import poses

IMPORTED = time.perf_counter()
TAU = 2 * np.pi


def main():
    arguments = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    arguments.add_argument("capture", type=Path)
    arguments.add_argument("--out", type=Path, required=True)
    arguments.add_argument("--orders", choices=["region", "pixel"], default="region")
    a = arguments.parse_args()
    clock = Clock()
    capture, photos = decode(a.capture)
    clock("photos")
    panel, setup = photos["panel"][0], photos["setup"][0]
    with ThreadPoolExecutor(2) as pool:
        views = list(pool.map(poses.find_tags, [panel, setup]))
    clock("tags")
    field, gamma = board_field(capture, photos, a.orders)
    clock("lines")
    scene = solve(a.capture, capture, photos, views, field)
    clock("poses")
    grid, height = shape(field, scene)
    clock("shape")
    deviation, sigma = deviate(height, grid)
    spots = find_spots(deviation, sigma, grid)
    clock("spots")
    write(a.out, scene, grid, height, deviation, sigma, spots)
    clock("files")
    print(json.dumps({
        "imports_s": round(IMPORTED - STARTED, 3),
        "stages_s": clock.stages,
        "work_s": round(sum(clock.stages.values()), 3),
        "peak_mb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024,
        "gamma": round(gamma, 3),
    }))


class Clock:
    def __init__(self):
        self.stages, self.last = {}, time.perf_counter()

    def __call__(self, name):
        now = time.perf_counter()
        self.stages[name] = round(now - self.last, 3)
        self.last = now


def decode(folder):
    capture = tomllib.loads((folder / "capture.toml").read_text())
    with ThreadPoolExecutor(2) as pool:
        images = list(pool.map(lambda f: cv2.imread(str(folder / f["file"]), cv2.IMREAD_GRAYSCALE), capture["frames"]))
    photos = {"pattern": []}
    for frame, image in zip(capture["frames"], images):
        if frame["role"] == "pattern":
            photos["pattern"].append((frame, image))
        else:
            photos[frame["role"]] = (image, frame["file"])
    return capture, photos


# --- lines ------------------------------------------------------------------------------------------------------

def board_field(capture, photos, orders):
    """Board u and v (mm) of every pixel, NaN where unknown, and the noise of each (mm)."""
    sets = {}
    for frame, image in photos["pattern"]:
        sets.setdefault((frame["axis"], frame["periods"]), []).append((frame["shift"], image))
    finest = max(periods for axis, periods in sets if axis == "u")
    gamma = estimate_gamma([i for _, i in sorted(sets["u", finest], key=lambda s: s[0])])
    table = ((np.arange(256) / 255.0) ** gamma).astype(np.float32)
    with ThreadPoolExecutor(2) as pool:
        keys = sorted(sets)
        phases = dict(zip(keys, pool.map(lambda k: demodulate(sets[k], k[1], table), keys)))
        by_axis = [[phases[k] for k in keys if k[0] == axis] for axis in "uv"]
        mask = np.logical_and(*pool.map(lambda p: stands_out(p[-1]), by_axis))
        mask = ndimage.uniform_filter(mask.astype(np.float32), 3) > 0.5
        mask = cv2.erode(mask.astype(np.uint8), np.ones((5, 5), np.uint8)) > 0
        mask = keep_large(mask)
        fractions = region_orders if orders == "region" else pixel_orders
        s = list(pool.map(lambda p: fractions(p, mask), by_axis))
    size = capture["board"]["width_mm"], capture["board"]["height_mm"]
    uv = [np.where(mask, (f - 0.5) * side, np.nan).astype(np.float32) for f, side in zip(s, size)]
    noise = [np.sqrt(0.5) * p[-1]["noise"] / np.maximum(p[-1]["modulation"], 1e-9) * side / (TAU * p[-1]["periods"])
             for p, side in zip(by_axis, size)]
    return dict(u=uv[0], v=uv[1], sigma=np.hypot(*noise).astype(np.float32), mask=mask), gamma


def estimate_gamma(photos):
    """The exponent that leaves no second harmonic in four quarter-period steps."""
    levels = np.stack([p.ravel()[::53] for p in photos]).astype(np.float64) / 255
    levels = levels[:, (levels < 250 / 255).all(0)]

    def harmonic(gamma):
        a, b, c, d = levels**gamma
        re, im = a - c, d - b
        power = re * re + im * im
        keep = power > 4e-4
        cos2 = (re**2 - im**2)[keep] / power[keep]
        return (0.25 * (a - b + c - d)[keep] * cos2 * np.sqrt(power[keep])).sum()
    low, high = 1.0, 3.0
    if harmonic(low) * harmonic(high) > 0:
        return 2.2
    first = harmonic(low)
    for _ in range(20):
        middle = (low + high) / 2
        low, high = (middle, high) if harmonic(middle) * first > 0 else (low, middle)
    return (low + high) / 2


def demodulate(steps, periods, table):
    shifts = np.array([s for s, _ in steps])
    design = np.column_stack([np.ones(len(shifts)), np.cos(TAU * shifts), -np.sin(TAU * shifts)])
    weights = np.linalg.pinv(design).astype(np.float32)
    linear = [cv2.LUT(image, table) for _, image in steps]
    c = sum(w * i for w, i in zip(weights[1], linear))
    s = sum(w * i for w, i in zip(weights[2], linear))
    sample = np.stack([i.ravel()[::97] for i in linear]).astype(np.float64)
    rest = sample - design @ (weights.astype(np.float64) @ sample)
    noise = np.median(np.sqrt((rest**2).sum(0) / max(len(shifts) - 3, 1))) / 0.6745
    return dict(phase=np.arctan2(s, c), modulation=np.hypot(s, c), noise=max(noise, 2e-4), periods=periods,
                steps=len(shifts))


def stands_out(phase):
    floor = 3 * np.sqrt(2 / phase["steps"]) * phase["noise"]
    sample = phase["modulation"].ravel()[::31]
    strong = sample[sample > 2 * floor]
    return phase["modulation"] > max(floor, 0.3 * np.median(strong) if len(strong) else 0)


def keep_large(mask, least=200):
    _, labels, stats, _ = cv2.connectedComponentsWithStats(mask.astype(np.uint8), connectivity=4)
    large = stats[:, cv2.CC_STAT_AREA] >= least
    large[0] = False
    return large[labels]


def pixel_orders(phases, mask):
    """Coarse to fine, every pixel alone."""
    value = np.mod(phases[0]["phase"], TAU)
    for before, now in zip(phases, phases[1:]):
        guess = value * (now["periods"] / before["periods"])
        value = now["phase"] + TAU * np.round((guess - now["phase"]) / TAU)
    return value / (TAU * phases[-1]["periods"])


def region_orders(phases, mask):
    """The finest phase unwrapped over the region; each area takes the order on which most of its pixels agree."""
    fine = phases[-1]
    unwrapped = restoration.unwrap_phase(np.ma.array(fine["phase"], mask=~mask)).filled(0).astype(np.float32)
    turns = np.round((pixel_orders(phases, mask) * (TAU * fine["periods"]) - unwrapped) / TAU).astype(np.int32)
    count, labels = cv2.connectedComponents(mask.astype(np.uint8), connectivity=4)
    order = np.zeros(count, np.int32)
    flat, all_turns = labels[mask], turns[mask]
    for label in range(1, count):
        votes = all_turns[flat == label]
        low = votes.min()
        order[label] = np.bincount(votes - low).argmax() + low
    return (unwrapped + TAU * order[labels]) / (TAU * fine["periods"])


# --- poses ------------------------------------------------------------------------------------------------------

def solve(folder, capture, photos, views, field):
    cameras, sigma = [], []
    for role in ("panel", "setup"):
        image, name = photos[role]
        f35 = Image.open(folder / name).getexif().get_ifd(0x8769).get(0xA405)
        cameras.append(((f35 or poses.GUESSED_35MM) / poses.FULL_FRAME_MM * max(image.shape),
                        (image.shape[1], image.shape[0])))
        sigma.append(0.005 + 0.3 / f35 if f35 else 0.2)
    first = poses.first_poses(capture, views, cameras)
    step = max(int(np.sqrt(field["mask"].sum() / 500)), 1)
    y, x = np.mgrid[step // 2:field["u"].shape[0]:step, step // 2:field["u"].shape[1]:step].reshape(2, -1)
    keep = field["mask"][y, x]
    y, x = y[keep], x[keep]
    board = np.column_stack([field["u"][y, x], field["v"][y, x]]).astype(float)
    problem = poses.Problem(capture, views, cameras, sigma, first, np.column_stack([x, y]) + 0.5, board)
    p = problem.solve()
    _, panel_board, focal, k1, _, c = problem.unpack(p)
    return dict(first=first, problem=problem, p=p, board=panel_board, focal=focal[0], k1=k1[0], c=c,
                tags=p[19:problem.panel_from].reshape(-1, 3), size=cameras[0][1])


# --- shape ------------------------------------------------------------------------------------------------------

def shape(field, scene):
    grid = grid_over(field, scene)
    above = np.zeros((grid["ny"], grid["nx"]))
    for tolerance in (1e-4, 1e-6):
        zx, zy, sigma = slopes_on(grid, field, scene, above)
        height = integrate(zx, zy, sigma, grid["step_mm"], above, tolerance)
        height -= np.nanmedian(height)
        above = np.nan_to_num(height)
    return grid, height


def on_panel(pixels, scene):
    d = poses.rays(pixels, scene["focal"], scene["k1"], scene["size"]) @ scene["first"]["rotation"].T
    eye = scene["first"]["eye"]
    hit = eye - d * (eye[2] / d[:, 2:])
    for _ in range(3):
        z = poses.panel_at(scene["c"], scene["problem"].scale, hit[:, 0], hit[:, 1])[0]
        hit = eye + d * ((z - eye[2]) / d[:, 2])[:, None]
    return hit


def grid_over(field, scene):
    y, x = np.nonzero(field["mask"])
    pick = slice(None, None, max(len(x) // 20000, 1))
    hit = on_panel(np.column_stack([x[pick], y[pick]]) + 0.5, scene)[:, :2]
    middle = np.array([[x[len(x) // 2] + 0.5, y[len(y) // 2] + 0.5]])
    footprint = np.linalg.norm(on_panel(middle + [1, 0], scene) - on_panel(middle, scene))
    step = max(round(2 * footprint * 4), 2) / 4
    first = (np.floor(hit.min(0) / step) - 2) * step
    cells = np.ceil((hit.max(0) - first) / step).astype(int) + 3
    return dict(x0_mm=first[0], y0_mm=first[1], step_mm=step, nx=int(cells[0]), ny=int(cells[1]))


def slopes_on(grid, field, scene, above):
    x, y = np.meshgrid(grid["x0_mm"] + np.arange(grid["nx"]) * grid["step_mm"],
                       grid["y0_mm"] + np.arange(grid["ny"]) * grid["step_mm"])
    z, zx, zy = poses.panel_at(scene["c"], scene["problem"].scale, x, y)
    p = np.stack([x, y, z + above], -1)
    first = scene["first"]
    pixel = poses.project((p - first["eye"]) @ first["rotation"], scene["focal"], scene["k1"], scene["size"]) - 0.5
    at = [pixel[..., 1], pixel[..., 0]]
    u, v, sigma = (ndimage.map_coordinates(field[k], at, order=1, cval=np.nan) for k in ("u", "v", "sigma"))
    rotation, origin = scene["board"]
    board = u[..., None] * rotation[:, 0] + v[..., None] * rotation[:, 1] + origin
    far, near = board - p, first["eye"] - p
    distance = np.linalg.norm(far, axis=-1, keepdims=True)
    n = near / np.linalg.norm(near, axis=-1, keepdims=True) + far / distance
    zx, zy = -n[..., 0] / n[..., 2] - zx, -n[..., 1] / n[..., 2] - zy
    read = np.isfinite(zx) & np.isfinite(zy)
    labels = measure.label(read, connectivity=1)
    largest = np.bincount(labels.ravel())[1:].argmax() + 1
    sigma = np.where(labels == largest, sigma / (2 * distance[..., 0]), np.nan)
    return zx, zy, sigma


def integrate(zx, zy, sigma, step, start, tolerance):
    """Weighted least squares on neighbours' differences (Southwell 1980), by conjugate gradients with the
    rectangle's Poisson equation, solved by cosine transforms, as preconditioner (Ghiglia and Romero 1994): the
    fastest of spsolve, lsqr, plain and Jacobi cg, and this."""
    read = np.isfinite(sigma)
    variance = np.where(read, sigma**2, np.inf)
    reference = np.median(variance[read])

    def edges(slope, axis):
        a, b = (slice(None, -1), slice(None)), (slice(1, None), slice(None))
        a, b = (a, b) if axis == 0 else (a[::-1], b[::-1])
        mean = 0.5 * (variance[a] + variance[b])
        w = np.where(np.isfinite(mean), reference / np.maximum(mean, 0.01 * reference), 0.0)
        d = 0.5 * step * (np.nan_to_num(slope[a]) + np.nan_to_num(slope[b]))
        return w, w * d
    wx, fx = edges(zx, 1)
    wy, fy = edges(zy, 0)

    def divergence(gx, gy):
        out = np.zeros(read.shape)
        out[:, :-1] -= gx
        out[:, 1:] += gx
        out[:-1] -= gy
        out[1:] += gy
        return out

    def apply(h):
        h = h.reshape(read.shape)
        return divergence(wx * np.diff(h, axis=1), wy * np.diff(h, axis=0)).ravel()
    ny, nx = read.shape
    eigen = (2 - 2 * np.cos(np.pi * np.arange(ny) / ny))[:, None] + (2 - 2 * np.cos(np.pi * np.arange(nx) / nx))
    eigen[0, 0] = np.inf

    def poisson(r):
        spectrum = fft.dctn(r.reshape(read.shape), workers=2) / eigen
        return fft.idctn(spectrum, workers=2).ravel()
    n = read.size
    operator = LinearOperator((n, n), apply, dtype=float)
    preconditioner = LinearOperator((n, n), poisson, dtype=float)
    height, _ = cg(operator, divergence(fx, fy).ravel(), start.ravel(), rtol=tolerance, maxiter=500, M=preconditioner)
    joined = divergence(np.zeros_like(wx), np.zeros_like(wy))
    joined[:, :-1] += wx
    joined[:, 1:] += wx
    joined[:-1] += wy
    joined[1:] += wy
    return np.where(joined > 0, height.reshape(read.shape), np.nan)


# --- spots ------------------------------------------------------------------------------------------------------

def deviate(height, grid, degree=6, sample_mm=2.0, sound_mm=0.002, margin_mm=6.0):
    """Height less a polynomial fitted robustly to sound metal, and its doubt."""
    ny, nx = height.shape
    read = np.isfinite(height)
    iy, ix = np.nonzero(read)
    px, py = (np.polynomial.legendre.legvander(2 * (np.arange(n) - k.min()) / np.ptp(k) - 1, degree)
              for n, k in ((nx, ix), (ny, iy)))
    terms = [(d - j, j) for d in range(degree + 1) for j in range(d + 1)]

    def fit(rows, value, weight):
        weighted = rows.T * weight
        return linalg.solve(weighted @ rows, weighted @ value, assume_a="pos")

    def whole(c):
        table = np.zeros((degree + 1, degree + 1))
        for value, (a, b) in zip(c, terms):
            table[b, a] = value
        return py @ table @ px.T
    stride = max(round(sample_mm / grid["step_mm"]), 1)
    pick = (ix % stride == 0) & (iy % stride == 0)
    y, x = iy[pick], ix[pick]
    rows = np.stack([px[x, a] * py[y, b] for a, b in terms], 1)
    value = height[y, x]
    c = fit(rows, value, np.ones(len(value)))
    scale = 3 * max(np.sqrt(np.mean((value - rows @ c) ** 2)), sound_mm)
    while True:
        for _ in range(3):
            c = fit(rows, value, 1 / (1 + ((value - rows @ c) / scale) ** 2) ** 2)
        if scale <= sound_mm:
            break
        scale = max(0.6 * scale, sound_mm)
    by = int(np.ceil(margin_mm / grid["step_mm"]))
    for _ in range(2):
        off = np.abs(height - whole(c)) > 1.5 * sound_mm
        off = keep_large(off, 6.0 / grid["step_mm"] ** 2)
        sound = read & ~(cv2.dilate(off.astype(np.uint8), np.ones((2 * by + 1,) * 2, np.uint8)) > 0)
        c = fit(rows, value, sound[y, x].astype(float))
    deviation = height - whole(c)
    size = int(30.0 / grid["step_mm"]) | 1
    share = ndimage.uniform_filter(sound.astype(float), size)
    near = ndimage.uniform_filter(np.where(sound, deviation, 0.0) ** 2, size)
    overall = np.mean(deviation[sound] ** 2)
    floor = np.where(share > 0.5 / size**2, 0.5 * near / np.maximum(share, 1e-12) + 0.5 * overall, 2 * overall)
    return deviation, np.sqrt(floor + 0.0004**2 + (0.004 * deviation) ** 2)


def find_spots(deviation, sigma, grid, least_mm=0.0025, least_mm2=12.0, average_mm=3.0):
    step = grid["step_mm"]
    read = np.isfinite(deviation)
    size = 2 * round(0.5 * average_mm / step) + 1
    smooth = ndimage.uniform_filter(np.nan_to_num(deviation), size)
    smooth /= np.maximum(ndimage.uniform_filter(read.astype(float), size), 1e-9)
    limit = np.maximum(least_mm, 3 * sigma)
    spots = []
    for kind, sign in (("low", -1), ("high", 1)):
        labels = measure.label(read & (sign * smooth > limit), connectivity=1)
        for area in measure.regionprops(labels, intensity_image=sign * smooth):
            if area.num_pixels * step**2 < least_mm2:
                continue
            y, x = area.coords[area.image_intensity[tuple((area.coords - area.bbox[:2]).T)].argmax()]
            spots.append(dict(
                kind=kind, x_mm=grid["x0_mm"] + x * step, y_mm=grid["y0_mm"] + y * step,
                height_mm=float(np.nanmean(deviation[max(y - 1, 0):y + 2, max(x - 1, 0):x + 2])),
                sigma_mm=float(sigma[y, x]), length_mm=area.axis_major_length * step,
                width_mm=area.axis_minor_length * step, angle_deg=float(np.degrees(np.pi / 2 - area.orientation)),
                area_mm2=area.num_pixels * step**2,
                volume_mm3=float(np.abs(deviation[tuple(area.coords.T)]).sum() * step**2)))
    return sorted(spots, key=lambda s: -abs(s["height_mm"]))


def write(out, scene, grid, height, deviation, sigma, spots):
    out.mkdir(parents=True, exist_ok=True)
    maps = dict(deviation=deviation, height=height, sigma=sigma)
    for name, values in maps.items():
        np.save(out / f"{name}.npy", values.astype(np.float32))
    tags = [dict(id=i, x_mm=t[0], y_mm=t[1],
                 z_mm=float(poses.panel_at(scene["c"], scene["problem"].scale, t[0], t[1])[0]))
            for i, t in zip(scene["first"]["ids"], scene["tags"])]
    (out / "reading.json").write_text(json.dumps(dict(
        panel_tags=tags, grid=grid, maps={name: f"{name}.npy" for name in maps}, spots=spots,
        read_fraction=float(np.isfinite(deviation).mean()), scale="absolute"), indent=1))
    shade = np.clip(128 + np.nan_to_num(deviation) / 0.1 * 127, 0, 255).astype(np.uint8)[::-1]
    cv2.imwrite(str(out / "map.png"), cv2.applyColorMap(shade, cv2.COLORMAP_TWILIGHT_SHIFTED))


main()
