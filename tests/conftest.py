"""What every test shares: hypothesis without deadlines (machines differ; time is held by each test's own limit)."""

from hypothesis import HealthCheck, settings

settings.register_profile(
    "house", deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow], max_examples=80
)
settings.load_profile("house")
