"""Rules over a dish, a channel, a file or the register, and the engine that runs them."""
