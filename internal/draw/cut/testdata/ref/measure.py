"""Audits DXFs with ezdxf and prints what a shop would measure in each, as a JSON list.

For every closed polyline on layer CUT: its true extents, number of arcs and
their radii; the extents of layer DATUM's closed outline; circles on DRILL; pieces
of no length; the extents of all that is drawn beside those the header states.
"""
import json
import math
import sys

import ezdxf
from ezdxf import bbox
from ezdxf.math import bulge_radius


def box(e):
    b = bbox.extents([e], fast=False)
    return [b.extmin.x, b.extmin.y, b.extmax.x, b.extmax.y]


def outline(e):
    if e.dxftype() == "POLYLINE":  # release 12
        pts = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in e.vertices]
    else:
        pts = list(e.get_points("xyb"))
    radii, none = [], 0
    for i, (x, y, bulge) in enumerate(pts):
        nx, ny, _ = pts[(i + 1) % len(pts)]
        none += math.hypot(nx - x, ny - y) < 1e-4
        if bulge:
            radii.append(bulge_radius((x, y), (nx, ny), bulge))
    return {"closed": bool(e.is_closed if e.dxftype() == "POLYLINE" else e.closed), "box": box(e), "radii": radii, "none": none}


def measure(path):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    msp = doc.modelspace()

    def circles(layer):
        return [[e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in msp.query(f'CIRCLE[layer=="{layer}"]')]

    cut = [outline(e) for e in msp.query('LWPOLYLINE POLYLINE[layer=="CUT"]')]
    lines = [math.dist(e.dxf.start, e.dxf.end) for e in msp.query("LINE")]
    drawn = bbox.extents(msp.query("LINE CIRCLE LWPOLYLINE POLYLINE"), fast=False)
    head = [*doc.header["$EXTMIN"][:2], *doc.header["$EXTMAX"][:2]]
    return {
        "errors": len(audit.errors),
        "insunits": doc.header.get("$INSUNITS", 0),
        "version": doc.dxfversion,
        "cut": cut,
        "cut_circles": circles("CUT"),
        "cut_other": len(msp.query('*[layer=="CUT"]')) - len(cut) - len(circles("CUT")),
        "datum": [outline(e) for e in msp.query('LWPOLYLINE POLYLINE[layer=="DATUM"]')],
        "pilots": circles("DRILL"),
        "glue": [outline(e) for e in msp.query('LWPOLYLINE POLYLINE[layer=="ENGRAVE"]')],
        "bars": sorted([abs(e.dxf.end.x - e.dxf.start.x), abs(e.dxf.end.y - e.dxf.start.y)] for e in msp.query('LINE[layer=="TEXT"]')),
        "layers": sorted({e.dxf.layer for e in msp}),
        "none": sum(length < 1e-4 for length in lines),
        "drawn": [drawn.extmin.x, drawn.extmin.y, drawn.extmax.x, drawn.extmax.y],
        "head": head,
        "text": [e.dxf.text for e in msp.query("TEXT")],
    }


print(json.dumps([measure(path) for path in sys.argv[1:]]))
