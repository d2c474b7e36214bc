"""One module a document: what stands where. No module here knows cairo or SVG."""
