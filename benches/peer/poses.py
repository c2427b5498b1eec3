"""Where everything stands: tags to first poses, then one least-squares problem with the mirrored points.

The same problem as `dentwright_optics::refine` solves: tags in both photos, one corner inset per photo and kind
of tag, both focal lengths and distortions with priors, board and set-up poses, tags on a polynomial panel.
"""

import cv2
import numpy as np
from scipy.optimize import least_squares

FULL_FRAME_MM, GUESSED_35MM = 36.0, 27.0
SCALES_MM = (400.0, 100.0, 40.0, 20.0, 10.0, 6.0, 4.0)
DEGREE = 4
STEP = 1e-6
POWERS = [(d - j, j) for d in range(DEGREE + 1) for j in range(d + 1)]


def find_tags(image):
    """{id: (4, 2) corners}, order (-h,-h) (h,-h) (h,h) (-h,h) in the tag's own y-up frame, outer-corner pixels.
    Found quickly first, then each refined in its own crop: the accurate refinement takes 3 s on a whole photo."""
    family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
    quick = cv2.aruco.ArucoDetector(family, parameters(cv2.aruco.CORNER_REFINE_NONE))
    exact = cv2.aruco.ArucoDetector(family, parameters(cv2.aruco.CORNER_REFINE_APRILTAG))
    found = {}
    for tag, corners in detect(quick, image):
        margin = 0.4 * np.ptp(corners, 0).max()
        low = np.maximum(corners.min(0) - margin, 0).astype(int)
        high = (corners.max(0) + margin).astype(int) + 1
        crop = np.ascontiguousarray(image[low[1]:high[1], low[0]:high[0]])
        refined = next((c + low for t, c in detect(exact, crop) if t == tag), corners)
        # OpenCV gives top-left, top-right, bottom-right, bottom-left with pixel (0, 0) at a pixel's centre.
        found[tag] = refined[[3, 2, 1, 0]] + 0.5
    return found


def detect(detector, image):
    corners, ids, _ = detector.detectMarkers(image)
    return [] if ids is None else [(int(i), c.reshape(4, 2).astype(float)) for i, c in zip(ids.ravel(), corners)]


def parameters(refinement):
    p = cv2.aruco.DetectorParameters()
    p.cornerRefinementMethod = refinement
    return p


def square(size):
    h = size / 2
    return np.array([[-h, -h], [h, -h], [h, h], [-h, h]])


def matrix(focal, size):
    return np.array([[focal, 0, size[0] / 2], [0, focal, size[1] / 2], [0, 0, 1.0]])


def plane_pose(points, pixels, k):
    flat = np.column_stack([points, np.zeros(len(points))])
    ok, r, t = cv2.solvePnP(flat, pixels, k, None, flags=cv2.SOLVEPNP_IPPE)
    ok, r, t = cv2.solvePnP(flat, pixels, k, None, r, t, True, cv2.SOLVEPNP_ITERATIVE)
    return cv2.Rodrigues(r)[0], t.ravel()


def first_poses(capture, views, cameras):
    """Panel frame through the tags, then set-up camera and board. Poses are (rotation, translation)."""
    ids = [i for i in capture["panel"]["tag_ids"] if i in views[0]]
    size = capture["panel"]["tag_size_mm"]
    k0, k1 = (matrix(*c) for c in cameras)
    centres = np.array([plane_pose(square(size), views[0][i], k0)[1] for i in ids])
    mean = centres.mean(0)
    z = np.linalg.svd(centres - mean)[2][2]
    z = -z if z @ mean > 0 else z
    x = np.array([1.0, 0, 0]) - z * z[0]
    x /= np.linalg.norm(x)
    rotation = np.vstack([x, np.cross(z, x), z])  # panel from camera
    eye = -rotation @ mean

    def on_plane(pixels):
        d = rays(pixels, cameras[0][0], 0.0, cameras[0][1]) @ rotation.T
        return (eye - d * (eye[2] / d[:, 2:]))[:, :2]

    tags = []
    for i in ids:
        q = on_plane(views[0][i])
        along = q[1] - q[0]
        tags.append([*q.mean(0), np.arctan2(along[1], along[0])])
    tags = np.array(tags)
    seen = [(tags[n], views[1][i]) for n, i in enumerate(ids) if i in views[1]]
    flat = np.vstack([square(size) @ turn(t[2]).T + t[:2] for t, _ in seen])
    setup = plane_pose(flat, np.vstack([c for _, c in seen]), k1)
    board = [t for t in capture["board"]["tags"] if t["id"] in views[1]]
    flat = np.vstack([square(t["size_mm"]) + [t["x_mm"], t["y_mm"]] for t in board])
    setup_board = plane_pose(flat, np.vstack([views[1][t["id"]] for t in board]), k1)
    panel_board = (setup[0].T @ setup_board[0], setup[0].T @ (setup_board[1] - setup[1]))
    return dict(ids=ids, rotation=rotation, eye=eye, tags=tags, setup=setup, panel_board=panel_board, board=board)


def turn(a):
    return np.array([[np.cos(a), -np.sin(a)], [np.sin(a), np.cos(a)]])


def rays(pixels, focal, k1, size):
    """Unit directions; focal and k1 may carry leading axes of several trials."""
    d = (pixels - np.array(size) / 2) / expand(focal)
    p = d.copy()
    for _ in range(5):
        p = d / (1 + expand(k1) * (p * p).sum(-1, keepdims=True))
    v = np.concatenate([p, np.ones_like(p[..., :1])], -1)
    return v / np.linalg.norm(v, axis=-1, keepdims=True)


def expand(value, axes=2):
    value = np.asarray(value)
    return value.reshape(*value.shape, *[1] * axes)


def project(points, focal, k1, size, axes=2):
    p = points[..., :2] / points[..., 2:]
    d = expand(focal, axes) * (1 + expand(k1, axes) * (p * p).sum(-1, keepdims=True))
    return p * d + np.array(size) / 2


def rotations(v):
    """Rodrigues' formula for rotation vectors (..., 3)."""
    angle = np.linalg.norm(v, axis=-1)[..., None, None]
    x, y, z = np.moveaxis(v, -1, 0)
    o = np.zeros_like(x)
    k = np.stack([o, -z, y, z, o, -x, -y, x, o], -1).reshape(*v.shape[:-1], 3, 3) / np.maximum(angle, 1e-300)
    return np.eye(3) + np.sin(angle) * k + (1 - np.cos(angle)) * (k @ k)


def panel_at(c, scale, x, y):
    """Height and slopes of the polynomial panel."""
    x, y = x / scale, y / scale
    px, py = [np.ones_like(x)], [np.ones_like(y)]
    for _ in range(DEGREE):
        px.append(px[-1] * x)
        py.append(py[-1] * y)
    z, zx, zy = (np.zeros_like(x) for _ in range(3))
    for value, (a, b) in zip(c, POWERS):
        z = z + value * px[a] * py[b]
        if a:
            zx = zx + value * a * px[a - 1] * py[b]
        if b:
            zy = zy + value * b * px[a] * py[b - 1]
    return z, zx / scale, zy / scale


def inset(corners, by):
    """Moves each corner inward along both of its sides."""
    def toward(k):
        d = np.roll(corners, -k, -2) - corners
        return d / np.linalg.norm(d, axis=-1, keepdims=True)
    a, b = toward(1), toward(3)
    sine = np.maximum(np.abs(a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]), 0.2)
    return corners + (a + b) * (expand(by) / sine)[..., None]


class Problem:
    """Unknowns: set-up pose 6, board pose 6, two log focal lengths, two distortions, three insets, tags 3 each,
    polynomial panel."""

    def __init__(self, capture, views, cameras, focal_sigma, first, pixels, board_mm):
        self.first, self.cameras, self.focal_sigma = first, cameras, focal_sigma
        self.pixels, self.board_mm = pixels, board_mm
        self.size = capture["panel"]["tag_size_mm"]
        self.panel_views = np.array([views[0][i] for i in first["ids"]])
        self.both = [n for n, i in enumerate(first["ids"]) if i in views[1]]
        self.setup_views = np.array([views[1][first["ids"][n]] for n in self.both])
        self.board_views = np.array([views[1][t["id"]] for t in first["board"]])
        self.board_points = np.array([square(t["size_mm"]) + [t["x_mm"], t["y_mm"]] for t in first["board"]])
        self.scale = max(50.0, np.abs(first["tags"][:, :2]).max())
        self.tags_at = 19
        self.panel_from = 19 + 3 * len(first["ids"])

    def start(self):
        def six(pose):
            return [*pose[1], *cv2.Rodrigues(pose[0])[0].ravel()]
        f = self.first
        head = [*six(f["setup"]), *six(f["panel_board"]), 0, 0, 0, 0, 0.3, 0.3, 0.3]
        return np.array([*head, *f["tags"].ravel(), *np.zeros(len(POWERS))])

    def unpack(self, p):
        """All of it may carry a leading axis of trials, as the Jacobian's columns are made at once."""
        def pose(s):
            return np.swapaxes(rotations(s[..., 3:6]), -1, -2), s[..., None, :3]
        focal = [self.cameras[k][0] * np.exp(p[..., 12 + k]) for k in (0, 1)]
        k1 = [p[..., 14], p[..., 15]]
        return pose(p[..., 0:6]), pose(p[..., 6:12]), focal, k1, p[..., 16:19], np.moveaxis(p[..., self.panel_from:], -1, 0)

    def tag_points(self, p):
        c = np.moveaxis(p[..., self.panel_from:], -1, 0)[..., None]
        t = p[..., self.tags_at:self.panel_from].reshape(*p.shape[:-1], -1, 3)
        _, zx, zy = panel_at(c, self.scale, t[..., 0], t[..., 1])
        one, zero = np.ones_like(zx), np.zeros_like(zx)
        ex = np.stack([one, zero, zx], -1) / np.sqrt(1 + zx**2)[..., None]
        n = np.stack([-zx, -zy, one], -1) / np.sqrt(1 + zx**2 + zy**2)[..., None]
        ey = np.cross(n, ex)
        sin, cos = np.sin(t[..., 2:]), np.cos(t[..., 2:])
        s = square(self.size)
        u, v = cos * s[:, 0] - sin * s[:, 1], sin * s[:, 0] + cos * s[:, 1]
        xy = t[..., None, :2] + u[..., None] * ex[..., None, :2] + v[..., None] * ey[..., None, :2]
        z = panel_at(c[..., None], self.scale, xy[..., 0], xy[..., 1])[0]
        return np.concatenate([xy, z[..., None]], -1)

    def residuals(self, p):
        (rs, ts), (rb, tb), focal, k1, insets, _ = self.unpack(p)
        rs, ts, rb, tb = (a[..., None, :, :] for a in (rs, ts, rb, tb))
        sizes = [c[1] for c in self.cameras]
        points = self.tag_points(p)
        to_camera = (points - self.first["eye"]) @ self.first["rotation"]
        board = np.concatenate([self.board_points, np.zeros((*self.board_points.shape[:2], 1))], -1)
        views = [(to_camera, 0, self.panel_views), (points[..., self.both, :, :] @ rs + ts, 1, self.setup_views),
                 ((board @ rb + tb) @ rs + ts, 1, self.board_views)]
        corners = [
            (inset(project(q, focal[k], k1[k], sizes[k], 3), insets[..., n]) - seen).reshape(*p.shape[:-1], -1) / 0.15
            for n, (q, k, seen) in enumerate(views)]
        sigma = np.array([*self.focal_sigma, 0.01, 0.01, 0.5, 0.5, 0.5])
        priors = (p[..., 12:19] - np.array([0, 0, 0, 0, 0.3, 0.3, 0.3])) / sigma
        return np.concatenate([*corners, priors], -1), self.mirrored(p) - self.board_mm

    def mirrored(self, p):
        """Board points (mm) that the pixels should mirror."""
        _, (rb, tb), focal, k1, _, c = self.unpack(p)
        eye = self.first["eye"]
        d = rays(self.pixels, focal[0], k1[0], self.cameras[0][1]) @ self.first["rotation"].T
        s = -eye[2] / d[..., 2]
        for _ in range(4):
            hit = eye + d * s[..., None]
            z, zx, zy = panel_at(c[..., None], self.scale, hit[..., 0], hit[..., 1])
            s = s - (hit[..., 2] - z) / (d[..., 2] - zx * d[..., 0] - zy * d[..., 1])
        hit = eye + d * s[..., None]
        n = np.stack([-zx, -zy, np.ones_like(zx)], -1) / np.sqrt(1 + zx**2 + zy**2)[..., None]
        inverse = np.swapaxes(rb, -1, -2)
        out = (d - 2 * (d * n).sum(-1, keepdims=True) * n) @ inverse
        start = (hit - tb) @ inverse
        return start[..., :2] - out[..., :2] * (start[..., 2:] / out[..., 2:])

    def solve(self):
        """Robust scales in turn (graduated non-convexity), each a few Levenberg-Marquardt steps of MINPACK. The
        forward-difference Jacobian is computed for all unknowns at once."""
        p = self.start()
        for scale in SCALES_MM:
            m = self.residuals(p)[1]
            weight = (1 / (1 + (m * m).sum(1) / scale**2))[:, None]

            def both(q):
                r, m = self.residuals(q)
                return np.concatenate([r, (weight * m).reshape(*q.shape[:-1], -1)], -1)

            def jacobian(q):
                return ((both(q + STEP * np.eye(len(q))) - both(q)) / STEP).T
            p = least_squares(both, p, jac=jacobian, method="lm", max_nfev=8, ftol=1e-5).x
        return p
