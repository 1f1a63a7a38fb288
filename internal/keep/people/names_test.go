package people

import (
	"strings"
	"testing"
)

func TestNames(t *testing.T) {
	for _, good := range []string{"Ada", "ada.b", "Åsa Ek", "O'Neil", "O’Neil", "7", "अनिल", "Zoë", "Ольга", "نادية", "山田 太郎", "田中 Ken", "김민수 Kim"} {
		if err := CheckName(good); err != nil {
			t.Error(err)
		}
		if Tidy(good) != good {
			t.Errorf("%q is kept as %q", good, Tidy(good))
		}
	}
	for bad, why := range map[string]string{
		"": "start with", " Ada": "start with", "Ada ": "one blank", "Ada  Ek": "one blank", "a\nb": "start with", "<b>": "start with",
		strings.Repeat("x", 64):           "63 at most",
		"Ada\u202eB":                      "start with", // turns what follows round
		"Ada\u200b":                       "start with", // zero width
		"A\u3164":                         "start with", // a letter that shows nothing
		"Ada\ufe0f":                       "start with", // a variation of nothing
		"a\u0301\u0301\u0301\u0301\u0301": "one blank",  // marks in a heap
		"\uff21da":                        "plain letters, as \"Ada\"",
		"ﬁn":                              "plain letters",
		"A\u0430da":                       "several scripts (Latin, Cyrillic)",
		"Αda":                             "several scripts (Greek, Latin)",
		"Adaあ한":                           "several scripts",
	} {
		if err := CheckName(bad); err == nil || !strings.Contains(err.Error(), why) {
			t.Errorf("CheckName(%q): %v, expected %q", bad, err, why)
		}
	}
	if got := Tidy(" Zoe\u0308 "); got != "Zoë" {
		t.Errorf("typed in parts: %q", got)
	}
}

func TestAlikeNames(t *testing.T) {
	for _, pair := range [][2]string{
		{"Ada", "ada"}, {"Аса", "Aca"}, {"АНТОН", "AHTOH"}, {"Νικ", "Νικ"}, {"O'Neil", "O’Neil"}, {"Bil1", "Bill"}, {"B0b", "BOb"}, {"Corn", "Com"},
	} {
		if !Alike(pair[0], pair[1]) || !Alike(pair[1], pair[0]) {
			t.Errorf("%q and %q are told apart", pair[0], pair[1])
		}
	}
	for _, pair := range [][2]string{{"Ada", "Ida"}, {"Ali", "All"}, {"Åsa", "Asa"}, {"Bo", "Bob"}} {
		if Alike(pair[0], pair[1]) {
			t.Errorf("%q and %q are not told apart", pair[0], pair[1])
		}
	}
}
