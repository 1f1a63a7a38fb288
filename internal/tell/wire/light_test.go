package wire

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/unit"
)

// Without readings the lists are empty and what does not exist is null.
func TestLightWithoutReadings(t *testing.T) {
	b, err := json.Marshal(LightOf(light.Report{}, unit.Metric))
	for _, part := range []string{`"holes":[]`, `"zones":[]`, `"notes":[]`, `"flicker_safe_s":[]`, `"ice":null`, `"mains_hz":null`} {
		if err != nil || !strings.Contains(string(b), part) {
			t.Errorf("%s lacks %s: %v", b, part, err)
		}
	}
}
