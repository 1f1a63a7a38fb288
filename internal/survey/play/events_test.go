package play

import (
	"math"
	"strings"
	"testing"
)

func TestReadEvents(t *testing.T) {
	r := standard(t, "north-american")
	ev, bad, err := ReadEvents("games.csv", strings.NewReader(
		"\xef\xbb\xbfX, y ,period,team,Phase,weight,who\n"+
			"61,-32,1,home,shot,,seven\n-65,19,2,away,goal,2.5,\n0,0,4,,faceoff,,\n80,3,,,,,\n"), r, EventFormat{Scale: foot})
	if err != nil || len(bad) != 0 {
		t.Fatal(err, bad)
	}
	if len(ev) != 4 {
		t.Fatalf("%d events, want 4", len(ev))
	}
	first := ev[0]
	if math.Abs(first.X-61*foot) > 1e-12 || math.Abs(first.Y+32*foot) > 1e-12 || first.Team != 0 || first.Period != 1 || first.Line != 2 {
		t.Errorf("first event: %+v", first)
	}
	if ev[1].Phase != Celebration || ev[1].Weight != 2.5 || ev[2].Phase != FaceOff || ev[2].Period != 2 || ev[3].Known {
		t.Errorf("later events: %+v", ev[1:])
	}
}

func TestReadEventsRefuses(t *testing.T) {
	r := standard(t, "north-american")
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "g.csv:1: empty"},
		{"no header", "61,-32\n", "g.csv:1: no column x"},
		{"twice", "x,y,x\n1,2,3\n", "g.csv:1:5: x: named twice"},
		{"word", "x,y\n1,2\n1,abc\n", `g.csv:3:3: y: "abc"`},
		{"nan", "x,y\nNaN,2\n", `g.csv:2:1: x: "NaN"`},
		{"far", "x,y\n120,2\n", `g.csv:2:1: x: "120"`},
		{"beyond the corner", "x,y\n98,42\n", `g.csv:2:4: y: "42"`},
		{"phase", "x,y,phase\n1,2,dance\n", `2:5: phase: "dance": write one of rush`},
		{"team", "x,y,team\n1,2,us\n", `2:5: team: "us"`},
		{"period", "x,y,period\n1,2,0\n", `2:5: period: "0"`},
		{"weight", "x,y,weight\n1,2,-1\n", `2:5: weight: "-1"`},
		{"short row", "x,y\n1\n", "has 1 columns, the first line 2"},
		{"quote", "x,y\n\"1,2\n", "not CSV"},
		{"semicolons", "x;y\n1;2\n", "separated by commas"},
		{"no rows", "x,y\n", "no usable row"},
		{"binary", "\x00\x01\x02,\xff\n", "no column x"},
	} {
		_, _, err := ReadEvents("g.csv", strings.NewReader(c.text), r, EventFormat{Scale: foot})
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), "g.csv:") {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
	}
}

// TestAMessageRepeatsLittle refuses fields of a megabyte: a message shows how they begin.
func TestAMessageRepeatsLittle(t *testing.T) {
	r, long := standard(t, "north-american"), strings.Repeat("z", 1<<20)
	for _, text := range []string{"x,y\n1," + long + "\n", "x,y\n1,2," + long + "\n", long + "\n1\n", "x,y,phase\n1,2," + long + "\n"} {
		if _, _, err := ReadEvents("g.csv", strings.NewReader(text), r, EventFormat{Scale: foot}); err == nil || len(err.Error()) > 500 {
			t.Errorf("%.20q: a message of %d bytes", text, len(err.Error()))
		}
	}
}

func TestLenientSkipsBadRowsByLine(t *testing.T) {
	r := standard(t, "north-american")
	ev, bad, err := ReadEvents("g.csv", strings.NewReader("x,y\n1,2\nzz,3\n4,5\n400,1\n"), r, EventFormat{Scale: foot, Lenient: true})
	if err != nil || len(ev) != 2 || len(bad) != 2 || bad[0].Line != 3 || bad[1].Line != 5 {
		t.Fatalf("events %v, bad %v, error %v", ev, bad, err)
	}
}

func TestLenientSaysWhyNoRowWillDo(t *testing.T) {
	r := standard(t, "north-american")
	_, _, err := ReadEvents("g.csv", strings.NewReader("x,y\n1,zz\n400,1\n"), r, EventFormat{Scale: foot, Lenient: true})
	if want := `g.csv: no usable row among 2; the first: g.csv:2:3: y: "zz": write a number`; err == nil || err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
}

func TestManyBadRowsAreCut(t *testing.T) {
	r := standard(t, "north-american")
	_, bad, err := ReadEvents("g.csv", strings.NewReader("x,y\n"+strings.Repeat("a,b\n", 50)), r, EventFormat{Scale: 1})
	if err == nil || len(bad) != 50 || !strings.Contains(err.Error(), "and 30 more bad rows") {
		t.Fatalf("%d bad rows, error %v", len(bad), err)
	}
}

func TestAroundKeepsThePuckWhereItWas(t *testing.T) {
	r := standard(t, "north-american")
	text := "x,y,phase\n61,-32,shot\n-65,19,\n-8,-27,\n-85,4,\n0,0,faceoff\n99,2,zone-play\n30,40,rush\n-88,1,net-front\n50,41,bench\n"
	events, _, err := ReadEvents("g.csv", strings.NewReader(text), r, EventFormat{Scale: foot})
	if err != nil {
		t.Fatal(err)
	}
	s, err := Around(t.Context(), r, events, DefaultAssumptions(), 1, 900)
	if err != nil {
		t.Fatal(err)
	}
	kept := 0
	for i := range s.Len() {
		m, ev := s.At(i), events[i%len(events)]
		sound(t, s.Layout, m)
		if m.Phase == Celebration || m.Phase == Bench {
			continue // in these the puck rests in the net or on the spot
		}
		if d := math.Hypot(m.Puck.X-ev.X, m.Puck.Y-ev.Y); d > 0.35 {
			t.Fatalf("line %d: puck %.2f m from the event", ev.Line, d)
		}
		kept++
	}
	if kept < 700 {
		t.Fatalf("only %d moments compared", kept)
	}
	if s.At(0).Shot != true || s.At(0).Phase != ZonePlay || s.At(3).Phase != NetFront {
		t.Errorf("phases from places: %s, %s", s.At(0).Phase, s.At(3).Phase)
	}
	few, err := Around(t.Context(), r, events, DefaultAssumptions(), 1, 3)
	if err != nil || few.Len() != 3 {
		t.Fatal(err)
	}
	if _, err := Around(t.Context(), r, nil, DefaultAssumptions(), 1, 3); err == nil {
		t.Error("no events: no error")
	}
}

// Where the home team begins toward end A, every row's period names the other
// end than its place does; shots and goals are taken at the goal before them.
func TestShotsAndGoalsGoAtTheGoalBeforeThem(t *testing.T) {
	r := standard(t, "north-american")
	text := "x,y,phase,period,team\n-61,-32,shot,1,home\n65,19,goal,1,away\n-85,2,net-front,3,home\n-70,-30,zone-play,1,home\n-8,-27,shot,1,home\n"
	events, _, err := ReadEvents("g.csv", strings.NewReader(text), r, EventFormat{Scale: foot})
	if err != nil {
		t.Fatal(err)
	}
	s, err := Around(t.Context(), r, events, DefaultAssumptions(), 1, 500)
	if err != nil {
		t.Fatal(err)
	}
	for i := range s.Len() {
		m, ev := s.At(i), events[i%len(events)]
		sound(t, s.Layout, m)
		want := int(sign(ev.X))
		if ev.Line == 6 { // from the neutral zone: the period says it
			want = 1
		}
		if m.End != want || m.Team != ev.Team || m.Period != ev.Period {
			t.Fatalf("line %d: team %d in period %d attacks end %+d, want %+d", ev.Line, m.Team, m.Period, m.End, want)
		}
		if scorer := m.People[0]; m.Phase == Celebration && (scorer.X < 0 || m.Puck.X < 0) {
			t.Fatalf("line %d: scored at end B, celebrated at %.1f m with the puck at %.1f m", ev.Line, scorer.X, m.Puck.X)
		}
	}
}

func FuzzReadEvents(f *testing.F) {
	f.Add("x,y\n1,2\n")
	f.Add("x,y,phase,period,team,weight\n61,-32,goal,3,home,2\n")
	f.Add("\"x\",y\n1e309,\"2\n")
	f.Add("\x00")
	r := standard(f, "international")
	f.Fuzz(func(t *testing.T, text string) {
		ev, _, err := ReadEvents("f", strings.NewReader(text), r, EventFormat{Scale: 1, Lenient: true})
		if err == nil && len(ev) == 0 {
			t.Fatal("no error and no events")
		}
		for _, e := range ev {
			if LayoutOf(r).Clearance(e.X, e.Y) < 0 {
				t.Fatalf("event off the ice: %+v", e)
			}
		}
	})
}
