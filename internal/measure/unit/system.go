package unit

// SystemOf guesses the system that a text is written in: Imperial when it reads
// as a length or size in feet or inches, else Metric.
func SystemOf(s string) System {
	text, err := normal(s)
	if err != nil {
		return Metric
	}
	c := scanner{s: text}
	for !c.done() {
		if name := c.word(); lengthUnits[name].imperial {
			return Imperial
		} else if name == "" {
			c.i++
		}
	}
	return Metric
}
