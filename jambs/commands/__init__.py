"""What people type and read on a terminal: each verb says what the face has done. Nothing heavy loads for --help."""
