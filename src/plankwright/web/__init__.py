"""The app: it reads a request, has the workshop do it, and shows the answer. Nothing is computed here."""
