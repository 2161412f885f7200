package show

// The part of SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format) that is
// written, in the standard's own names. Numbers of lines and columns count from 1.

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool        sarifTool                `json:"tool"`
	Invocations []sarifInvocation        `json:"invocations"`
	BaseIDs     map[string]sarifArtifact `json:"originalUriBaseIds"`
	Artifacts   []sarifAnalysed          `json:"artifacts"`
	ColumnKind  string                   `json:"columnKind"`
	Results     []sarifResult            `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name    string      `json:"name"`
	Version string      `json:"version"`
	Rules   []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID string `json:"id"`
	// Name is the ID as one word with capitals: the two must differ.
	Name          string       `json:"name"`
	Short         sarifMessage `json:"shortDescription"`
	Help          sarifMessage `json:"help"`
	Configuration sarifLevel   `json:"defaultConfiguration"`
}

type sarifLevel struct {
	Level string `json:"level"`
}

type sarifMessage struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type sarifInvocation struct {
	Successful    bool                `json:"executionSuccessful"`
	Notifications []sarifNotification `json:"toolExecutionNotifications,omitempty"`
}

type sarifNotification struct {
	Level   string       `json:"level"`
	Message sarifMessage `json:"message"`
}

type sarifAnalysed struct {
	Location sarifArtifact `json:"location"`
	Length   int           `json:"length"`
	Roles    []string      `json:"roles"`
}

// sarifArtifact is where a file is; with a description only, what an ID stands for.
type sarifArtifact struct {
	URI         string        `json:"uri,omitempty"`
	BaseID      string        `json:"uriBaseId,omitempty"`
	Index       *int          `json:"index,omitempty"`
	Description *sarifMessage `json:"description,omitempty"`
}

type sarifResult struct {
	RuleID       string            `json:"ruleId"`
	RuleIndex    int               `json:"ruleIndex"`
	Level        string            `json:"level"`
	Message      sarifMessage      `json:"message"`
	Locations    []sarifLocation   `json:"locations"`
	Related      []sarifLocation   `json:"relatedLocations,omitempty"`
	Fingerprints map[string]string `json:"partialFingerprints"`
	Fixes        []sarifFix        `json:"fixes,omitempty"`
	// Suppressions is empty for what is reported: all results have it, or none.
	Suppressions []sarifSuppression `json:"suppressions"`
}

type sarifLocation struct {
	Physical sarifPhysical `json:"physicalLocation"`
	Message  *sarifMessage `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   sarifRegion   `json:"region"`
}

// sarifRegion ends before its last column; one without length is an insertion point.
type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

type sarifFix struct {
	Description sarifMessage  `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifArtifact      `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	Deleted  sarifRegion   `json:"deletedRegion"`
	Inserted *sarifContent `json:"insertedContent,omitempty"`
}

type sarifContent struct {
	Text string `json:"text"`
}

type sarifSuppression struct {
	Kind          string        `json:"kind"`
	Justification string        `json:"justification"`
	Location      sarifLocation `json:"location"`
}
