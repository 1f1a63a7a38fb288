package card

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"
)

// RFC 5545, 3.1: lines are folded by octets, and no letter of several octets is torn.
func TestCalendarFoldsBetweenLetters(t *testing.T) {
	r := rink(t)
	cleo, _ := r.season.Person("cleo")
	all := cards(t, "nov-07", nil)
	for i := range all {
		all[i].Game.Home, all[i].Arena.Name = strings.Repeat("Цапли ", 12), strings.Repeat("Ледовый дворец ", 9)
	}
	for _, line := range strings.Split(Calendar(cleo, all, time.Unix(0, 0).UTC()), "\r\n") {
		if len(line) > 75 || !utf8.ValidString(line) {
			t.Errorf("%d octets, whole letters %t: %q", len(line), utf8.ValidString(line), line)
		}
	}
}
