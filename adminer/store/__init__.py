"""The DuckDB schema, loading, the journal of corrections, queries."""
