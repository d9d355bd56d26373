"""What people write: typed records, reading them, and checking them."""
