package sheet

// styler looks up the styles of classes within classes, each combination once.
type styler struct {
	sheet Stylesheet
	known map[within]styled
}

// within is a class list inside a style that was resolved before.
type within struct {
	class  string
	parent int
}

// styled is a resolved style with its number; the zero value is the page's own.
type styled struct {
	Style
	id int
}

func newStyler(s Stylesheet) *styler { return &styler{s, map[within]styled{}} }

func (s *styler) resolve(class string, base styled) styled {
	if class == "" {
		return base
	}
	key := within{class, base.id}
	st, ok := s.known[key]
	if !ok {
		st = styled{s.sheet.Resolve(class, base.Style), len(s.known) + 1}
		s.known[key] = st
	}
	return st
}
