package sheet

// WebFont returns a TrueType font that holds only the characters given, for a page
// that serves it under the family name of the face: what is left of the Go fonts
// for Latin text is a fifth of the file. Characters that the font lacks are left out.
func (f Face) WebFont(letters string) []byte {
	use := glyphUse{}
	use.add(f, letters)
	return f.font().Unhinted(use.glyphs(f))
}
