"""OpenCV's calibration of the rendered photos of the camera sheet, for crates/optics/tests/calibrate_opencv.rs.

    dentwright demo-captures --camera /some/folder
    python3 calibrate.py /some/folder     (versions: benches/peer/requirements.txt)

Tags are found by OpenCV's own detector with sub-pixel corners, the lens by calibrateCameraExtended with two radial and
two tangential terms. Its pixel (0, 0) is the middle of the first pixel; half a pixel is added to the centre here.
"""

import json
import sys
from pathlib import Path

import cv2
import numpy as np

FIRST, COLUMNS, ROWS, TAG_MM, PITCH_MM = 24, 8, 5, 24.0, 33.0


def on_sheet(tag):
    """Corners of a tag on the sheet in OpenCV's order: top left, top right, bottom right, bottom left; y down."""
    k = tag - FIRST
    x, y, h = (k % COLUMNS) * PITCH_MM, (k // COLUMNS) * PITCH_MM, TAG_MM / 2
    return [(x - h, y - h, 0), (x + h, y - h, 0), (x + h, y + h, 0), (x - h, y + h, 0)]


def main(folder):
    settings = cv2.aruco.DetectorParameters()
    settings.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
    detector = cv2.aruco.ArucoDetector(cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11), settings)
    points, pixels, size = [], [], None
    for path in sorted(Path(folder).glob("camera_*.jpg")):
        grey = cv2.imread(str(path), cv2.IMREAD_GRAYSCALE)
        size = grey.shape[::-1]
        corners, ids, _ = detector.detectMarkers(grey)
        points.append(np.array([p for tag in ids.ravel() for p in on_sheet(int(tag))], np.float32))
        pixels.append(np.concatenate([c.reshape(4, 2) for c in corners]).astype(np.float32))
    rms, camera, bend, _, _, sigma, *_ = cv2.calibrateCameraExtended(
        points, pixels, size, None, None, flags=cv2.CALIB_FIX_K3
    )
    bend, sigma = bend.ravel(), sigma.ravel()
    answer = {
        "opencv": cv2.__version__,
        "photos": len(points),
        "corners": int(sum(len(p) for p in points)),
        "rms_px": float(rms),
        # fx, fy, cx, cy, k1, k2, p1, p2
        "constants": [camera[0, 0], camera[1, 1], camera[0, 2] + 0.5, camera[1, 2] + 0.5, *bend[:4]],
        "sigma": list(map(float, sigma[:8])),
    }
    answer["constants"] = [float(v) for v in answer["constants"]]
    text = json.dumps(answer, indent=2)
    Path(__file__).with_name("calibration_opencv.json").write_text(text + "\n")
    print(text)


main(sys.argv[1])
