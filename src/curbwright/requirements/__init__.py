"""What is asked of a cart, and whether it holds."""

from curbwright.requirements.finding import Finding
from curbwright.requirements.judge import judge
from curbwright.requirements.requirement import Requirement, requirements

__all__ = ["Finding", "Requirement", "judge", "requirements"]
