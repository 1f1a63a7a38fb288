package sheet

// Role is what a part of a document is, by the standard structure types of
// ISO 32000-1, 14.8.4.
type Role string

// The roles in use.
const (
	RoleTitle     Role = "H1" // of the document's chapters
	RoleHeading   Role = "H2"
	RoleParagraph Role = "P"
	RoleList      Role = "L"
	RoleItem      Role = "LI"
	RoleLabel     Role = "Lbl"
	RoleBody      Role = "LBody"
	RoleTable     Role = "Table"
	RoleRow       Role = "TR"
	RoleHead      Role = "TH" // of a column
	RoleCell      Role = "TD"
	RoleFigure    Role = "Figure"
	RoleCaption   Role = "Caption"
	RoleContents  Role = "TOC"
	RoleEntry     Role = "TOCI"
	RoleLink      Role = "Link"
)

// Part is a part of a document as those meet it who have it read out. Elements
// name the part that they are painted for; parts come in the order in which
// they are first painted. What is painted for no part is decoration.
type Part struct {
	Role Role
	In   *Part  // nil: the document itself
	Alt  string // says what a figure shows
}

// Within returns a new part of a role within this one.
func (p *Part) Within(r Role) *Part { return &Part{Role: r, In: p} }

// PartOf says of what part of the document the element is, and returns the element.
func (e *Element) PartOf(p *Part) *Element {
	e.Part = p
	return e
}
