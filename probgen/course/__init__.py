"""The orchestration: set file and roster in, a folder of sheets, keys and answers out."""
