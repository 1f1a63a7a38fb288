package glass

// Cautions returns the sentences that stand on every drawing and page about
// barrier work, in the order of their weight.
func Cautions() []string {
	return []string{
		"Barrier work belongs to the rink operator and the glass maker, and follows local codes and licensed practice.",
		"Never cut tempered or laminated glass: it is ordered made.",
		"No hole without its cover: the cover is in whenever nobody works the hole.",
		"Nothing past the rink face during play.",
		"The model does not replace a strength check.",
	}
}
