// Keeps the screen awake while one works by it.
