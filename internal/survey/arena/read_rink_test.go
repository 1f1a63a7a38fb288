package arena

import (
	"strings"
	"testing"
)

// A rink that cannot be is told at the dimension that is at fault, as far as
// the file says that dimension itself.
func TestRinkFaultNamesItsLine(t *testing.T) {
	const head = "rinkpane: arena 1\nname: A\nunits: metric\nboards: {height: 1 m}\n"
	const own = head + `rink:
  length: 60 m
  width: 30 m
  corner-radius: 8.5 m
  markings:
    goal-line: 4 m
    blue-line: 22.86 m
    circle-radius: 4.5 m
    spot-from-goal: 6 m
    spot-from-axis: 7 m
    line-width: 50 mm
`
	cases := []struct{ text, from, to, says string }{
		{own, "length: 60 m", "length: 200 m", "a.yaml:6:11: rink.length: rink length 200 m"},
		{own, "width: 30 m", "width: 3 m", "a.yaml:7:10: rink.width: rink width 3 m"},
		{own, "8.5 m", "20 m", "a.yaml:8:18: rink.corner-radius: corner radius 20 m"},
		{own, "goal-line: 4 m", "goal-line: 30 m", "a.yaml:10:16: rink.markings.goal-line: goal line 30 m"},
		{own, "22.86 m", "2 m", "a.yaml:11:16: rink.markings.blue-line: blue line 2 m"},
		{own, "4.5 m", "12 m", "a.yaml:12:20: rink.markings.circle-radius: face-off circle"},
		{own, "spot-from-goal: 6 m", "spot-from-goal:", "a.yaml:12:20: rink.markings.circle-radius: circle radius 4.5 m"},
		{own, "from-axis: 7 m", "from-axis: 14 m", "a.yaml:14:21: rink.markings.spot-from-axis: face-off circle"},
		{own, "50 mm", "40 m", "a.yaml:15:17: rink.markings.line-width: line width 40 m"},
		{head + "rink: {standard: international, width: 12 m}\n", "", "", "a.yaml:5:7: rink: corner radius 8.5 m"},
	}
	for _, c := range cases {
		d, err := Read("a.yaml", strings.NewReader(strings.Replace(c.text, c.from, c.to, 1)))
		if err == nil {
			_, err = d.Check()
		}
		if err == nil || !strings.HasPrefix(err.Error(), c.says) {
			t.Errorf("%s: message %v, want %q", c.to, err, c.says)
		}
	}
}
