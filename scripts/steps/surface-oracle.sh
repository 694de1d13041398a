# The roof surface against an outside skeleton library, over seeded random plans.
PLANS=300
SEED=7
surface_oracle $PLANS $SEED
