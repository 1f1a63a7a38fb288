package rules

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/survey/arena"
)

// reserved are names that some systems give to devices: a file or folder of
// that name cannot be made there, whatever its ending. Source: the naming
// conventions of the Windows file system.
func reserved(id string) bool {
	name := strings.ToUpper(id)
	if slices.Contains([]string{"CON", "PRN", "AUX", "NUL"}, name) {
		return true
	}
	return len(name) == 4 && (strings.HasPrefix(name, "COM") || strings.HasPrefix(name, "LPT")) && name[3] >= '1' && name[3] <= '9'
}

// idNotes remarks on ids of holes that cannot all become names of files.
func idNotes(a arena.Arena) []string {
	var notes []string
	first := map[string]string{}
	for _, h := range a.Working() {
		low := strings.ToLower(h.ID)
		if other, met := first[low]; met {
			notes = append(notes, fmt.Sprintf("The ids of holes %s and %s differ by case only: on many systems their files would be one. Rename one.", other, h.ID))
		} else {
			first[low] = h.ID
		}
		if reserved(h.ID) {
			notes = append(notes, fmt.Sprintf("Hole %s has an id that some systems reserve for a device: its files cannot be kept there. Rename it.", h.ID))
		}
	}
	return notes
}
