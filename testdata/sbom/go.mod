module sbom

go 1.26

require (
	github.com/CycloneDX/cyclonedx-go v0.9.2
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.1
)

require golang.org/x/text v0.14.0 // indirect
