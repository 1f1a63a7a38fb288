package play

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Moments that are written and read come back, every body at its place; what the
// file says in full leaves nothing to fill.
func TestMomentsComeBackAsWritten(t *testing.T) {
	r := standard(t, "international")
	set := sample(t, r, DefaultAssumptions(), 5, 300)
	var b bytes.Buffer
	if err := set.WriteMoments(&b); err != nil {
		t.Fatal(err)
	}
	if lines := bytes.Count(b.Bytes(), []byte("\n")); lines != 1+300*(People+1) {
		t.Fatalf("%d lines", lines)
	}
	tracks, err := ReadTracks("m.csv", &b, r)
	if err != nil {
		t.Fatal(err)
	}
	back, filled, err := Tracked(t.Context(), r, tracks, DefaultAssumptions(), 99)
	if err != nil || filled.String() != "" || filled.Moments != 300 {
		t.Fatalf("%v, filled %q", err, filled)
	}
	for i := range set.Len() {
		want, got := set.At(i), back.At(i)
		for k := range want.People {
			if d := math.Abs(wrap(want.People[k].Heading - got.People[k].Heading)); d > 1e-5 {
				t.Fatalf("moment %d, person %d faces %v, written %v", i, k, got.People[k].Heading, want.People[k].Heading)
			}
			got.People[k].Heading = want.People[k].Heading
		}
		if got != want {
			t.Fatalf("moment %d:\n%+v\nwritten\n%+v", i, got, want)
		}
	}
}

const trackHead = "moment,role,team,x_m,y_m,subject\n"

// Who was not seen is placed as the sampler places him, clear of those who were,
// and everything that was filled is counted.
func TestUnseenIsFilledAndCounted(t *testing.T) {
	r := standard(t, "north-american")
	tracks, err := ReadTracks("t.csv", strings.NewReader(trackHead+
		"g1-07:12,skater,home,24,3,1\ng1-07:12,skater,away,25.2,3.4,\ng1-07:12,goalkeeper,away,26,0.5,\ng1-07:12,puck,,24.8,3,\n"), r)
	if err != nil {
		t.Fatal(err)
	}
	set, f, err := Tracked(t.Context(), r, tracks, DefaultAssumptions(), 1)
	if err != nil {
		t.Fatal(err)
	}
	if want := (Filled{Moments: 1, People: People - 3, Phases: 1, Weights: 1, Headings: 3, Heights: 3, Ends: 1}); f != want {
		t.Errorf("filled %+v, want %+v", f, want)
	}
	if got := f.String(); got != "13 unseen persons, 1 phases, 1 news weights, 1 ends attacked, 3 faces' directions, 3 heights" {
		t.Errorf("told as %q", got)
	}
	m := set.At(0)
	if m.Team != 0 || m.End != 1 || m.Subject != 0 || (Ends{}).Attacks(m.Team, m.Period) != 1 {
		t.Errorf("home attacks end B with the first skater as subject, got %+v", m)
	}
	if p := m.People[0]; p.X != 24 || p.Y != 3 {
		t.Errorf("the tracked skater stands at %v, %v", p.X, p.Y)
	}
	seen := map[int]bool{0: true, Defenders: true, DefenderGoalie: true}
	for i := range m.People {
		for j := range i {
			d := math.Hypot(m.People[i].X-m.People[j].X, m.People[i].Y-m.People[j].Y)
			if !(seen[i] && seen[j]) && d < Radius(i)+Radius(j) {
				t.Errorf("persons %d and %d stand %.2f m apart", j, i, d)
			}
		}
	}
}

// The end attacked is the file's, else the one that the carrier's team does not guard.
func TestWhoAttacksWhere(t *testing.T) {
	r := standard(t, "north-american")
	for _, c := range []struct {
		name, rows string
		team, end  int
	}{
		{"goalkeepers tell", "1,skater,away,-20,0,\n1,goalkeeper,home,-26,0,\n1,puck,,-20.5,0,\n", 1, -1},
		{"an own goalkeeper tells", "1,skater,home,5,0,\n1,goalkeeper,home,-26,0,\n1,puck,,5.5,0,\n", 0, 1},
		{"only the puck", "1,puck,,-20,0,\n", 0, -1},
	} {
		tracks, err := ReadTracks("t.csv", strings.NewReader(trackHead+c.rows), r)
		if err != nil {
			t.Fatal(c.name, err)
		}
		set, _, err := Tracked(t.Context(), r, tracks, DefaultAssumptions(), 1)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if m := set.At(0); m.Team != c.team || m.End != c.end {
			t.Errorf("%s: team %d attacks %d", c.name, m.Team, m.End)
		}
	}
}

func TestReadTracksRefuses(t *testing.T) {
	r := standard(t, "north-american")
	for _, c := range []struct{ name, rows, want string }{
		{"inside one another", "1,skater,home,5,0,\n1,skater,away,5.05,0,\n", "t.csv:3:15: x_m: \"5.05\": stands 0.05 m from the body at line 2"},
		{"beyond the boards", "1,skater,home,5,14,\n", "t.csv:2:15: x_m: "},
		{"a corner's arc", "1,skater,home,30,12.5,\n", "beyond the boards"},
		{"unknown role", "1,coach,home,5,0,\n", `t.csv:2:3: role: "coach": write skater`},
		{"two subjects", "1,skater,home,5,0,1\n1,skater,away,9,0,1\n", "t.csv:3:19: subject: \"1\": a second subject; the first stands at line 2"},
		{"a sixth skater", strings.Repeat("1,skater,home,%d,0,\n", 6), "role: \"skater\": 6 of this role and team; a moment holds 5"},
		{"an official's team", "1,referee,home,5,0,\n", ": team: "},
		{"a player without one", "1,skater,,5,0,\n", ": team: "},
		{"two pucks", "1,puck,,5,0,\n1,puck,,6,0,\n", "a second puck"},
		{"rows apart", "1,puck,,5,0,\n2,puck,,5,0,\n1,skater,home,3,3,\n", "t.csv:4:1: moment: \"1\": comes back; it began at line 2"},
		{"a word", "1,skater,home,x,0,\n", `x_m: "x": write a number`},
		{"no rows", "", "no moment"},
	} {
		rows := c.rows
		if strings.Contains(rows, "%d") {
			rows = fmt.Sprintf(rows, 1, 3, 5, 7, 9, 11)
		}
		_, err := ReadTracks("t.csv", strings.NewReader(trackHead+rows), r)
		if err == nil || !strings.HasPrefix(err.Error(), "t.csv:") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	if _, err := ReadTracks("t.csv", strings.NewReader("moment,role\n1,puck\n"), r); err == nil || !strings.Contains(err.Error(), "no column x_m") {
		t.Errorf("a file without places: %v", err)
	}
}

// Whatever persons are taken out of a moment, the others stay where they were and
// the moment stays whole.
func TestAnyPartOfAMomentIsFilledAgain(t *testing.T) {
	r := standard(t, "north-american")
	set := sample(t, r, DefaultAssumptions(), 3, 40)
	var b bytes.Buffer
	if err := set.WriteMoments(&b); err != nil {
		t.Fatal(err)
	}
	tracks, err := ReadTracks("m.csv", &b, r)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		full := tracks[rapid.IntRange(0, len(tracks)-1).Draw(t, "moment")]
		part := full
		part.Bodies = nil
		for _, b := range full.Bodies {
			if rapid.Bool().Draw(t, "seen") {
				part.Bodies = append(part.Bodies, b)
			}
		}
		part.Seen = rapid.Bool().Draw(t, "puck")
		again, f, err := Tracked(t.Context(), r, []Track{part}, DefaultAssumptions(), rapid.Uint64().Draw(t, "seed"))
		if err != nil {
			t.Fatal(err)
		}
		if f.People != len(full.Bodies)-len(part.Bodies) {
			t.Fatalf("%d filled of %d", f.People, len(full.Bodies)-len(part.Bodies))
		}
		m := again.At(0)
		for _, b := range part.Bodies {
			found := false
			for _, p := range m.People {
				found = found || math.Abs(p.X-b.X)+math.Abs(p.Y-b.Y) < 1e-5
			}
			if !found {
				t.Fatalf("nobody stands at %.2f, %.2f any more", b.X, b.Y)
			}
		}
		for i, p := range m.People {
			if again.Layout.Clearance(p.X, p.Y) < 0 || !(p.Height > 0.3) || math.IsNaN(p.Heading) {
				t.Fatalf("person %d: %+v", i, p)
			}
		}
	})
}
