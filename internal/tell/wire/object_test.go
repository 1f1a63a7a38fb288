package wire_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/wire"
)

// A name's end says the unit of a quantity; what is not known is null.
func TestObject(t *testing.T) {
	for _, c := range []struct {
		of   wire.Object
		want string
	}{
		{wire.Object{}, `{}`},
		{wire.Object{"b", 1, "a", "<&>"}, `{"b":1,"a":"<&>"}`},
		{wire.Object{"focal_mm", 200 * unit.Millimetre, "near_m", 1500 * unit.Millimetre}, `{"focal_mm":200,"near_m":1.5}`},
		{wire.Object{"pan_deg", unit.Degree, "size_mm", unit.Size{W: 0.125, H: 0.25}}, `{"pan_deg":1,"size_mm":[125,250]}`},
		{wire.Object{"far_m", unit.Maybe[unit.Length]{}, "near_mm", unit.Known(unit.Length(0.5))}, `{"far_m":null,"near_mm":500}`},
		{wire.Object{"of", []string(nil), "in", wire.Object{"tilt_deg", unit.Known(unit.Angle(0))}}, `{"of":[],"in":{"tilt_deg":0}}`},
	} {
		data, err := c.of.MarshalJSON()
		if err != nil || compact(t, data) != c.want {
			t.Errorf("%v is %s, want %s (%v)", c.of, data, c.want, err)
		}
	}
	for _, bad := range []wire.Object{{"name"}, {1, 2}, {"f", func() {}}} {
		if data, err := json.Marshal(bad); err == nil {
			t.Errorf("%v is %s, want an error", bad, data)
		}
	}
}

func compact(t *testing.T, data []byte) string {
	t.Helper()
	var b bytes.Buffer
	if err := json.Compact(&b, data); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
