"""Words in, offers out: the spaCy pipeline and the assembly of offers."""
