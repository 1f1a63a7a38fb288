"""Audits a DXF with ezdxf and prints what a shop would measure in it, as JSON.

For every closed polyline on layer CUT: its true extents, number of arcs and
their radii; the extents of layer DATUM's closed outline; circles on ENGRAVE.
"""
import json
import math
import sys

import ezdxf
from ezdxf import bbox
from ezdxf.math import bulge_radius

doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
msp = doc.modelspace()


def box(e):
    b = bbox.extents([e], fast=False)
    return [b.extmin.x, b.extmin.y, b.extmax.x, b.extmax.y]


def outline(e):
    pts = list(e.get_points("xyb"))
    radii = []
    for i, (x, y, bulge) in enumerate(pts):
        if bulge:
            nx, ny, _ = pts[(i + 1) % len(pts)]
            radii.append(bulge_radius((x, y), (nx, ny), bulge))
    return {"closed": bool(e.closed), "box": box(e), "radii": radii}


cut = [outline(e) for e in msp.query('LWPOLYLINE[layer=="CUT"]')]
print(json.dumps({
    "errors": len(audit.errors),
    "insunits": doc.header["$INSUNITS"],
    "version": doc.dxfversion,
    "cut": cut,
    "cut_other": len(msp.query('*[layer=="CUT"]')) - len(cut),
    "datum": [outline(e) for e in msp.query('LWPOLYLINE[layer=="DATUM"]')],
    "pilots": [[e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in msp.query('CIRCLE[layer=="ENGRAVE"]')],
    "text": [e.dxf.text for e in msp.query("TEXT")],
}))
