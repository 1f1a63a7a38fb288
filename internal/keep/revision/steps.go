package revision

// Undo and redo are read from the texts alone: a save that puts back the text
// before the present one was an undo, one that puts back the text after it a
// redo, any other a step of its own. So everybody who opens a document has the
// same undo, and nothing but the versions is kept.
//
//	versions  1  2  3  4    5    6    7
//	texts     a  b  c  b    a    b    d
//	          steps    undo undo redo step: c can no longer be redone

// Steps returns the places in a list of texts, or of their whole hashes, oldest
// first, of the text that an undo would put back, of the step that it would take
// back, and of the text that a redo would put back; -1 where there is none.
func Steps(texts []string) (undo, undone, redo int) {
	var line []int // places of the steps, those undone last
	at := -1       // the present one in line
	for i, m := range texts {
		switch {
		case at >= 0 && m == texts[line[at]]: // the same text again
		case at > 0 && m == texts[line[at-1]]:
			at--
		case at >= 0 && at+1 < len(line) && m == texts[line[at+1]]:
			at++
		default:
			line = append(line[:at+1], i)
			at++
		}
	}
	undo, undone, redo = -1, -1, -1
	if at > 0 {
		undo, undone = line[at-1], line[at]
	}
	if at >= 0 && at+1 < len(line) {
		redo = line[at+1]
	}
	return undo, undone, redo
}
