package play

import (
	"fmt"
	"io"
	"math"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/rink"
)

// Track is one moment as somebody tracked it: who was seen, where. What a
// tracked moment does not say is unknown, and [Tracked] fills it.
type Track struct {
	Line   int    // of its first row, for messages
	Name   string // as the file has it
	Phase  Phase
	Phased bool    // the file names the phase
	Period int     // 1, 2 or 3; 0: not given
	End    int     // the end attacked, +1 for B, -1 for A; 0: not given
	Weight float64 // news weight, without unit; 0: not given
	Shot   int     // 1 yes, -1 no, 0: not given
	Puck   Puck
	Seen   bool // the puck was seen
	Bodies []Body
}

// Body is one person of a tracked moment.
type Body struct {
	Line    int
	Role    Role
	Team    int     // 0 home, 1 away, -1 an official
	X, Y    float64 // metres, rink frame
	Heading float64 // radians counter-clockwise from +x; NaN: not given
	Height  float64 // top of the helmet above the ice, metres; NaN: not given
	Subject bool
}

// Role is what a row of a file of moments stands for.
type Role string

// The roles, as written in files.
const (
	Skater     Role = "skater"
	Goalkeeper Role = "goalkeeper"
	Referee    Role = "referee"
	Linesman   Role = "linesman"
	PuckRole   Role = "puck"
)

// trackColumns are the columns of a file of moments.
func trackColumns() form.Columns {
	return form.Columns{
		Must: []string{"moment", "role", "x_m", "y_m"},
		May:  []string{"phase", "weight", "team", "heading_deg", "height_m", "subject", "puck", "period", "end", "shot"},
	}
}

// Limits of the reader.
const (
	maxTrackBytes = 1 << 30
	maxTracks     = MaxMoments
	tallest       = 2.6 // metres with skates and helmet
)

// ReadTracks reads moments from CSV: a row for every body that was seen and one
// for the puck, the rows of a moment together; x toward end B, origin at centre
// ice. A bad row refuses the file, with up to 20 bad rows named.
func ReadTracks(name string, in io.Reader, r rink.Rink) ([]Track, error) {
	t, err := form.ReadTable(name, in, maxTrackBytes, trackColumns())
	if err != nil {
		return nil, err
	}
	rd := trackReader{lay: LayoutOf(r), seen: map[string]int{}}
	bad, err := eachRow(t, maxRowErrors, rd.add)
	switch {
	case err == nil && len(bad) > 0:
		err = refuse(bad, "")
	case err == nil && len(rd.tracks) == 0:
		err = fmt.Errorf("%s: no moment: give at least one row", name)
	}
	if err != nil {
		return nil, err
	}
	return rd.tracks, nil
}

// trackReader holds the state of one reading.
type trackReader struct {
	lay    Layout
	tracks []Track
	seen   map[string]int // moments that are done, and the line where each began
}

// add adds a row to its moment.
func (r *trackReader) add(in row) error {
	name := in.Text("moment")
	if len(r.tracks) == 0 || r.tracks[len(r.tracks)-1].Name != name {
		if begun, again := r.seen[name]; again {
			return in.Bad("moment", fmt.Sprintf("comes back; it began at line %d: keep the rows of a moment together", begun))
		}
		if len(r.tracks) == maxTracks {
			return fmt.Errorf("%s: more than %d moments: split the file", in.Place(), maxTracks)
		}
		r.seen[name] = in.Line
		r.tracks = append(r.tracks, Track{Line: in.Line, Name: name})
	}
	t := &r.tracks[len(r.tracks)-1]
	if err := t.about(in); err != nil {
		return err
	}
	if role := Role(in.Text("role")); role == PuckRole {
		return r.puck(t, in)
	}
	b, err := r.body(in)
	if err != nil {
		return err
	}
	if err := t.admit(b, in); err != nil {
		return err
	}
	t.Bodies = append(t.Bodies, b)
	return nil
}

// place reads a place on the ice.
func (r *trackReader) place(in row) (x, y float64, err error) {
	if x, err = in.Number("x_m"); err != nil {
		return
	}
	if y, err = in.Number("y_m"); err != nil {
		return
	}
	if off := -r.lay.Clearance(x, y); off > 0 {
		err = in.Bad("x_m", fmt.Sprintf("with y_m %g it lies beyond the boards by %.2f m: metres from centre ice?", y, off))
	}
	return
}

func (r *trackReader) puck(t *Track, in row) (err error) {
	if t.Seen {
		return in.Bad("role", "a second puck in this moment: keep one")
	}
	if t.Puck.X, t.Puck.Y, err = r.place(in); err != nil {
		return err
	}
	if in.Text("height_m") != "" {
		if t.Puck.Z, err = in.Number("height_m"); err != nil || t.Puck.Z < 0 {
			return in.Bad("height_m", "write metres above the ice, from 0")
		}
	}
	t.Seen = true
	return nil
}

func (r *trackReader) body(in row) (b Body, err error) {
	b = Body{Line: in.Line, Role: Role(in.Text("role")), Heading: math.NaN(), Height: math.NaN()}
	switch b.Role {
	case Skater, Goalkeeper, Referee, Linesman:
	default:
		return b, in.Bad("role", "write skater, goalkeeper, referee, linesman or puck")
	}
	if b.Team, err = in.team(); err != nil {
		return b, err
	}
	if player := b.Role == Skater || b.Role == Goalkeeper; player != (b.Team >= 0) {
		return b, in.Bad("team", "write home or away for a player, nothing for an official")
	}
	if b.X, b.Y, err = r.place(in); err != nil {
		return b, err
	}
	if in.Text("heading_deg") != "" {
		if b.Heading, err = in.Number("heading_deg"); err != nil {
			return b, err
		}
		b.Heading = wrap(b.Heading * math.Pi / 180)
	}
	if in.Text("height_m") != "" {
		if b.Height, err = in.Number("height_m"); err != nil || !(b.Height > 0.3 && b.Height < tallest) {
			return b, in.Bad("height_m", "write the top of the helmet above the ice, 0.3 to 2.6 m")
		}
	}
	b.Subject, err = in.mark("subject")
	return b, err
}

// mark reads 1 as yes, 0 and nothing as no.
func (r row) mark(column string) (bool, error) {
	switch r.Text(column) {
	case "1":
		return true, nil
	case "", "0":
		return false, nil
	}
	return false, r.Bad(column, "write 1, 0 or nothing")
}

// about reads what a row says of its whole moment; rows must not differ.
func (t *Track) about(in row) error {
	if s := in.Text("phase"); s != "" {
		p, ok := phaseNamed(s)
		if !ok || p == shotPhase || t.Phased && p != t.Phase {
			return in.Bad("phase", "write one of "+phaseNames()+", the same in all rows of a moment")
		}
		t.Phase, t.Phased = p, true
	}
	w, err := in.weight(t.Weight)
	if err != nil || t.Weight > 0 && w != t.Weight {
		return in.Bad("weight", "write a number above 0, at most 1e6, the same in all rows of a moment")
	}
	t.Weight = w
	p, err := in.period()
	if err != nil || t.Period > 0 && p > 0 && p != t.Period {
		return in.Bad("period", "write a period from 1 to 20, the same in all rows of a moment")
	}
	t.Period = max(t.Period, p)
	switch in.Text("end") {
	case "":
	case "A", "B":
		end := map[string]int{"A": -1, "B": 1}[in.Text("end")]
		if t.End != 0 && end != t.End {
			return in.Bad("end", "differs within a moment: write the end that is attacked")
		}
		t.End = end
	default:
		return in.Bad("end", "write A or B, the end that is attacked")
	}
	shot, err := in.mark("shot")
	if err == nil && in.Text("shot") != "" {
		t.Shot = map[bool]int{true: 1, false: -1}[shot]
	}
	return err
}

// mostOf is how many of a role a moment holds, for each team.
func mostOf(r Role) int {
	switch r {
	case Skater:
		return Defenders - Attackers
	case Goalkeeper:
		return 1
	}
	return mostOfficials
}

// admit refuses a body that the moment has no room for.
func (t *Track) admit(b Body, in row) error {
	same, officials := 1, 1
	for _, other := range t.Bodies {
		if other.Role == b.Role && other.Team == b.Team {
			same++
		}
		if other.Team < 0 {
			officials++
		}
		if b.Subject && other.Subject {
			return in.Bad("subject", fmt.Sprintf("a second subject; the first stands at line %d: a picture is of one", other.Line))
		}
		if d := math.Hypot(b.X-other.X, b.Y-other.Y); d < insideAnother {
			return in.Bad("x_m", fmt.Sprintf("stands %.2f m from the body at line %d: bodies inside one another", d, other.Line))
		}
	}
	if b.Team < 0 {
		same = officials
	}
	if same > mostOf(b.Role) {
		return in.Bad("role", fmt.Sprintf("%d of this role and team; a moment holds %d: full strength, both goalkeepers, four officials", same, mostOf(b.Role)))
	}
	return nil
}

// insideAnother is the distance in metres of two bodies' middles below which
// one stands in the other. Tracked players come as near as 0.7 m, and half of
// that in a pile; nearer is a mistake of the tracking.
const insideAnother = 0.15
