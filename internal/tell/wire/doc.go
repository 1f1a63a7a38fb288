// Package wire writes answers as JSON: the fields that scripts rely on, in SI or
// in the unit that a field's name or unit says. Rooms below hold typed values;
// here they become numbers, and their sentences are set in a reader's units.
//
//	rules.Finding --Findings(list, system)--> {"rule", "holes", "status", "measured", ... "message"}
//
// Fields are only added, never renamed or dropped. A list without members is [], a
// number that does not exist null.
package wire
