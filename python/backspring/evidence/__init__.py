"""What the library says beside what published sources and independent methods say."""
