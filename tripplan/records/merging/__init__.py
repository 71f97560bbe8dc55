"""What differs between two states of a document, and both changes in one."""
