package lsp

import (
	"context"
	"encoding/json"

	"go.lsp.dev/protocol"
)

// section is the name of the settings in the editor's configuration.
const section = "fairlead"

// settings are what the user can turn off.
type settings struct {
	Hints struct {
		// Tension shows what each strand carries, Advantage what each rig has.
		Tension   bool `json:"tension"`
		Advantage bool `json:"advantage"`
	} `json:"hints"`
	// Lens shows the summary above each rig.
	Lens bool `json:"lens"`
}

// usual are the settings where nobody says otherwise: everything is shown.
func usual() settings {
	var s settings
	s.Hints.Tension, s.Hints.Advantage, s.Lens = true, true, true
	return s
}

// with gives the settings with what a value says, by itself or under the section's name;
// what it does not say, or says in another form, stays.
func (s settings) with(value []byte) settings {
	var named struct {
		Fairlead json.RawMessage `json:"fairlead"`
	}
	if json.Unmarshal(value, &named) == nil && len(named.Fairlead) > 0 {
		value = named.Fairlead
	}
	changed := s
	if json.Unmarshal(value, &changed) != nil {
		return s
	}
	return changed
}

// didChangeConfiguration takes settings that the editor sends, or asks for them.
func (s *Server) didChangeConfiguration(p *protocol.DidChangeConfigurationParams) {
	client := s.client
	if client.configuration {
		s.errand(func(ctx context.Context) { s.askSettings(ctx, client) })
		return
	}
	s.takeSettings(p.Settings)
}

// askSettings asks the editor for its settings, if it has any to give.
func (s *Server) askSettings(ctx context.Context, client abilities) {
	if !client.configuration {
		return
	}
	name := section
	var values []protocol.LSPAny
	_, err := s.conn.Call(ctx, protocol.MethodWorkspaceConfiguration,
		&protocol.ConfigurationParams{Items: []protocol.ConfigurationItem{{Section: &name}}}, &values)
	s.noteUnlessEnded(ctx, protocol.MethodWorkspaceConfiguration, err)
	if err == nil && len(values) == 1 {
		s.takeSettings(values[0])
	}
}

// takeSettings makes settings count, and asks the editor to ask again for what they
// change.
func (s *Server) takeSettings(value []byte) {
	s.mu.Lock()
	before := s.settings
	s.settings = s.settings.with(value)
	changed := s.settings != before
	s.mu.Unlock()
	if changed {
		s.refresh(hintsRefresh | lensesRefresh)
	}
}

// shown gives the settings as they are.
func (s *Server) shown() settings {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.settings
}
