package edit

// Named is a field with its value, for [Group].
type Named struct {
	Name  string
	Value *Value
}

// Group returns a value of fields in their order.
func Group(fields ...Named) *Value {
	v := &Value{kind: group}
	for _, f := range fields {
		v.fields = append(v.fields, namedValue{f.Name, *f.Value})
	}
	return v
}

// List returns a value that is a list of texts.
func List(texts ...string) *Value {
	v := &Value{kind: list}
	for _, t := range texts {
		v.items = append(v.items, Value{text: t})
	}
	return v
}
