"""The hazards of old wood in one short paragraph, for wherever an answer is shown."""

CAUTION = (
    "Before you saw: old boards hide nails and rust (is your tetanus shot current?), paint of unknown age "
    "may hold lead, what lies behind them may hold asbestos, and walls hold wires and pipes. Local codes "
    "and licensed trades decide what may be done."
)
