"""What general-purpose readers find in the small files that `flow` exports; fails where it is not what went in.

Run from this folder with trimesh 5.2.0 and surfalize 0.19.2 (PyPI, MIT): python3 export.py
The surface is a tilted plane of 7 by 5 cells of 2 mm, z = x/8 + 0.75 - (y - 10)/16, with a hole of two cells.
"""

import hashlib
import zipfile

import numpy as np
import trimesh
from surfalize import Surface

plane = lambda x, y: x / 8 + 0.75 - (y - 10) / 16
# 24 squares less the hole's: two cells missing take six squares, of which four keep one triangle.
triangles = 2 * (24 - 6) + 4
area = triangles * 2.0 * np.sqrt(1 + 1 / 8**2 + 1 / 16**2)

for name, corners in (("export_small.ply", 33), ("export_small.stl", 33)):
    mesh = trimesh.load(name, process=True)
    assert len(mesh.vertices) == corners and len(mesh.faces) == triangles, (name, len(mesh.vertices), len(mesh.faces))
    assert np.allclose(mesh.vertices[:, 2], plane(mesh.vertices[:, 0], mesh.vertices[:, 1]), atol=1e-6)
    assert np.allclose(mesh.bounds, [[-6, 10, plane(-6, 18)], [6, 18, plane(6, 10)]])
    assert np.isclose(mesh.area, area) and (mesh.face_normals[:, 2] > 0.9).all()
    print(name, len(mesh.vertices), "corners,", len(mesh.faces), "triangles, area", round(mesh.area, 6), "mm²")

with zipfile.ZipFile("export_small.x3p") as x3p:
    main, data = x3p.read("main.xml"), x3p.read("bindata/data.bin")
    assert x3p.read("md5checksum.hex").decode() == hashlib.md5(main).hexdigest() + " *main.xml\n"
    assert hashlib.md5(data).hexdigest().encode() in main
surface = Surface.load("export_small.x3p")
heights = np.asarray(surface.data, float)
y, x = np.mgrid[0:5, 0:7]
expected = 1e3 * (0.25 * x - 0.125 * y)
rows_up = np.nanmax(np.abs(heights - expected)) < 1e-6
assert rows_up or np.nanmax(np.abs(heights[::-1] - expected)) < 1e-6
assert np.isnan(heights).sum() == 2 and np.isclose(surface.step_x, 2000) and np.isclose(surface.step_y, 2000)
print("export_small.x3p", heights.shape, "heights, step", surface.step_x, "µm, highest", round(np.nanmax(heights), 6), "µm")
