"""Answers of scikit-image and SciPy on small inputs, for the tests of `optics` and `surface`.

Run from this folder with the versions of benches/peer/requirements.txt: python3 make.py
Files are raw little-endian rows, shape in the name as ROWSxCOLUMNS: .f32 float, .f64 double, .u8 bytes.
"""

import numpy as np
from scipy import sparse
from scipy.sparse.csgraph import connected_components
from scipy.sparse.linalg import spsolve
from skimage.restoration import unwrap_phase


def save(name, array, kind):
    suffix = {"<f4": "f32", "<f8": "f64", "u1": "u8"}[kind]
    array.astype(kind).tofile(f"{name}_{array.shape[0]}x{array.shape[1]}.{suffix}")


def unwrapping(random):
    """A sloping, bulging, noisy phase with two holes and a separate island; scikit-image's unwrap_phase."""
    y, x = np.mgrid[0:80, 0:96]
    bump = 14 * np.exp(-((x - 60) ** 2 + (y - 30) ** 2) / (2 * 13**2))
    truth = 0.55 * x - 0.3 * y + 0.004 * (y - 40) ** 2 + bump + random.normal(0, 0.25, x.shape)
    mask = np.ones(x.shape, bool)
    mask[20:32, 18:30] = False
    mask[(x - 70) ** 2 + (y - 58) ** 2 < 60] = False
    mask[x + y > 155] = False
    mask[72:, :14] = False
    mask[74:, :12] = True
    phase = np.angle(np.exp(1j * truth)).astype(np.float32)
    answer = unwrap_phase(np.ma.array(phase.astype(np.float64), mask=~mask), rng=0)
    save("unwrap_phase", phase, "<f4")
    save("unwrap_mask", mask, "u1")
    save("unwrap_answer", answer.filled(np.nan), "<f4")


def integration(random, step=0.5):
    """Noisy slopes of unequal doubt on a masked grid; the same weighted equations as ours solved by spsolve."""
    y, x = np.mgrid[0:44, 0:60]
    height = 0.3 * np.exp(-((x - 25) ** 2 + (y - 20) ** 2) / 90.0) + 1e-4 * (x - 30) * (y - 10)
    zy, zx = np.gradient(height, step)
    sigma = (1e-3 * random.uniform(0.5, 2.0, x.shape)).astype(np.float32)
    zx = (zx + sigma * random.normal(size=x.shape)).astype(np.float32)
    zy = (zy + sigma * random.normal(size=x.shape)).astype(np.float32)
    mask = np.ones(x.shape, bool)
    mask[8:16, 36:50] = False
    mask[(x - 12) ** 2 + (y - 32) ** 2 < 30] = False
    mask[:, 57] = False
    mask[30:36, 52:57] = False
    index = np.arange(x.size).reshape(x.shape)
    rows, left, right, weight, wanted = 0, [], [], [], []
    for a, b, slope in ((np.s_[:, :-1], np.s_[:, 1:], zx), (np.s_[:-1], np.s_[1:], zy)):
        both = mask[a] & mask[b]
        s, t = slope.astype(float), sigma.astype(float)
        left.append(index[a][both])
        right.append(index[b][both])
        wanted.append(step * rise(s, mask, 1 if slope is zx else 0)[both])
        weight.append(1 / (0.5 * (t[a] ** 2 + t[b] ** 2))[both])
    left, right, wanted, weight = map(np.concatenate, (left, right, wanted, weight))
    edges = np.arange(len(left))
    one = np.ones(len(left))
    d = sparse.csr_matrix((np.r_[one, -one], (np.r_[edges, edges], np.r_[right, left])), (len(left), x.size))
    normal = (d.T @ sparse.diags(weight) @ d).tocsr()
    value = d.T @ (weight * wanted)
    answer = np.full(x.size, np.nan)
    count, label = connected_components(normal, directed=False)
    for area in range(count):
        cells = np.flatnonzero(label == area)
        if len(cells) < 2:
            continue
        free = cells[1:]  # the first cell at zero, then the mean at zero
        answer[cells[0]] = 0
        answer[free] = spsolve(normal[free][:, free].tocsc(), value[free])
        answer[cells] -= answer[cells].mean()
    zx[~mask], zy[~mask], sigma[~mask] = np.nan, np.nan, np.nan
    save("integrate_dzdx", zx, "<f4")
    save("integrate_dzdy", zy, "<f4")
    save("integrate_sigma", sigma, "<f4")
    save("integrate_answer", answer.reshape(x.shape), "<f8")
    save("integrate_area", label.reshape(x.shape) % 256, "u1")


def rise(slope, mask, axis):
    """Integral over one step of the cubic through four slopes; of the trapezoid where one of them is missing."""
    s = np.moveaxis(np.where(mask, slope, np.nan), axis, 0)
    near = s[:-1] + s[1:]
    far = np.full_like(near, np.nan)
    far[1:-1] = s[:-3] + s[3:]
    return np.moveaxis(np.where(np.isfinite(far), (13 * near - far) / 24, near / 2), 0, axis)


random = np.random.default_rng(1)
unwrapping(random)
integration(random)
