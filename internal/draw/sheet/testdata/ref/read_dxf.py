# Reads and audits DXFs with ezdxf 1.x (Debian: python3-ezdxf) and prints what
# it found in each as a JSON list. Run by dxf_reference_test.go.
import json
import sys

import ezdxf


def entity(e):
    d = {"Kind": e.dxftype(), "Layer": e.dxf.layer, "Linetype": e.dxf.linetype if e.dxf.hasattr("linetype") else ""}
    if e.dxftype() == "LWPOLYLINE":
        d["Closed"] = bool(e.closed)
        d["Points"] = [list(p) for p in e.get_points("xyb")]
    if e.dxftype() == "POLYLINE":
        d["Closed"] = bool(e.is_closed)
        d["Points"] = [[v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)] for v in e.vertices]
    if e.dxftype() == "LINE":
        d["Points"] = [[*list(e.dxf.start)[:2], 0], [*list(e.dxf.end)[:2], 0]]
    if e.dxftype() in ("CIRCLE", "ARC"):
        d["Center"], d["Radius"] = list(e.dxf.center), e.dxf.radius
    if e.dxftype() == "ARC":
        d["Start"], d["End"] = e.dxf.start_angle, e.dxf.end_angle
    if e.dxftype() == "TEXT":
        d["Text"], d["Insert"] = ezdxf.decode_dxf_unicode(e.dxf.text), list(e.dxf.insert)
        d["Height"], d["Rotation"] = e.dxf.height, e.dxf.rotation
    return d


def read(path):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    return {
        "Version": doc.dxfversion,
        "Units": doc.header.get("$INSUNITS", 0),
        "Errors": [str(e.message) for e in audit.errors],
        "Fixes": [str(e.message) for e in audit.fixes],
        "Layers": [l.dxf.name for l in doc.layers],
        "Entities": [entity(e) for e in doc.modelspace()],
    }


print(json.dumps([read(path) for path in sys.argv[1:]]))
