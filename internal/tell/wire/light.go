package wire

import (
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// LightReport is the light of one arena as seen from its holes.
type LightReport struct {
	Arena       string             `json:"arena"`
	Readings    int                `json:"readings"`    // of the survey; 0 with a light given by hand
	Known       bool               `json:"known"`       // there is a light to compute with
	Calibration optics.Calibration `json:"calibration"` // C of ISO 2720, without unit
	MainsHz     *float64           `json:"mains_hz"`    // null when neither survey nor request say it
	FlickerSafe []unit.Shutter     `json:"flicker_safe_s"`
	Lens        string             `json:"lens"` // id; "" without one
	Body        string             `json:"body"`
	Ice         *ZoneLight         `json:"ice"` // null when the light is not known
	Zones       []ZoneLight        `json:"zones"`
	Holes       []HoleLight        `json:"holes"`
	Notes       []string           `json:"notes"`
	Assumed     []Assumption       `json:"assumed"`
}

// HoleLight is one hole's table, a row a zone.
type HoleLight struct {
	Hole  string     `json:"hole"`
	Zones []LightRow `json:"zones"`
}

// ZoneLight is the light of one zone of the ice: [light.ZoneLight] under the contract's names.
type ZoneLight struct {
	Zone         string           `json:"zone"`
	Low          unit.Illuminance `json:"low_lx"`
	Median       unit.Illuminance `json:"median_lx"`
	High         unit.Illuminance `json:"high_lx"`
	Mean         unit.Illuminance `json:"mean_lx"`
	Uniformity   float64          `json:"uniformity"`         // lowest light over the mean, a share
	Extrapolated float64          `json:"extrapolated_share"` // share of the zone outside the readings
}

// LightRow is one zone as seen from one hole.
type LightRow struct {
	ZoneLight
	Exposure
	Dark         Exposure    `json:"dark"`
	Bright       Exposure    `json:"bright"`
	Distance     unit.Length `json:"distance_m"` // from the hole to the zone's middle
	Depth        *Depth      `json:"depth"`      // null without a lens
	OverISO      bool        `json:"over_iso_max"`
	OverISOFaces bool        `json:"over_iso_max_faces"` // the ISO for faces passes the body's limit
	PastStop     bool        `json:"past_widest_stop"`
	OffFlicker   bool        `json:"off_flicker"` // not a flicker-safe time on known mains
	// FaceLux is the median light on upright faces, and Faces the setting that suits it.
	FaceLux unit.Illuminance `json:"face_median_lx"`
	Faces   Exposure         `json:"faces"`
}

// Depth is what looks sharp when the lens frames a player in the zone's middle.
type Depth struct {
	Focal float64      `json:"focal_mm"`
	Near  unit.Length  `json:"near_m"`
	Far   *unit.Length `json:"far_m"` // null at or past the hyperfocal distance
}

// Exposure is a whole setting for one light, exact values beside the nearest third-stop marks.
type Exposure struct {
	EV100          float64      `json:"ev100"`
	ISO            unit.ISO     `json:"iso"`
	ISONominal     float64      `json:"iso_nominal"`
	Shutter        unit.Shutter `json:"shutter_s"`
	Stop           unit.Stop    `json:"stop"`
	ShutterNominal string       `json:"shutter_nominal"` // as engraved: "1/1000"
	StopNominal    string       `json:"stop_nominal"`    // as engraved: "f/2.8"
	Solved         string       `json:"solved"`          // "iso", "shutter" or "stop"
}

// LightAlone is a setting for one light, without an arena.
type LightAlone struct {
	Light unit.Illuminance `json:"light_lx"`
	Exposure
	FlickerSafe []unit.Shutter `json:"flicker_safe_s,omitempty"`
}

// ExposureOf puts the nearest marks beside the exact setting.
func ExposureOf(x optics.Exposure) Exposure {
	shutter, stop, iso := x.Marks()
	return Exposure{x.EV100, x.ISO, iso.Nominal, x.Shutter, x.Stop, shutter.Text, stop.Text, x.Solved}
}

// LightOf encodes a report, with notes in the system's units.
func LightOf(r light.Report, sys unit.System) LightReport {
	out := LightReport{
		r.Arena, r.Readings, r.Known, r.Calibration, plain(r.Mains), append([]unit.Shutter{}, r.FlickerSafe...), r.Lens, r.Body,
		(*ZoneLight)(r.Ice), []ZoneLight{}, []HoleLight{}, say.All(r.Notes, sys), Assumed(r.Assumed, sys),
	}
	for _, z := range r.Zones {
		out.Zones = append(out.Zones, ZoneLight(z))
	}
	for _, h := range r.Holes {
		out.Holes = append(out.Holes, HoleLight{h.Hole, rowsOf(h.Zones)})
	}
	return out
}

// rowsOf is an empty list, not null, without light.
func rowsOf(rows []light.Row) []LightRow {
	out := make([]LightRow, len(rows))
	for i, r := range rows {
		out[i] = LightRow{
			ZoneLight(r.ZoneLight), ExposureOf(r.Exposure), ExposureOf(r.Dark), ExposureOf(r.Bright),
			r.Distance, nil, r.OverISO, r.OverISOFaces, r.PastStop, r.OffFlicker, r.FaceLux, ExposureOf(r.Faces),
		}
		if d := r.Depth; d != nil {
			out[i].Depth = &Depth{Focal: d.Focal.Millimetres(), Near: d.Near}
			if !d.Infinite() {
				out[i].Depth.Far = &d.Far
			}
		}
	}
	return out
}
