"""Where things stand and how much room is left.

Lengths are behind the front of the deck, off the centre line towards the curb, and above the deck.
"""

from curbwright.figures import equation
from curbwright.quantities import Metres


@equation("geometry", uncited=True)
def middle(edge: Metres, size: Metres) -> Metres:
    """Middle of a thing from its lower edge and its size.

    >>> middle(edge=1.0, size=0.5)
    1.25
    """
    return edge + size / 2


@equation("geometry", uncited=True)
def far_edge(edge: Metres, size: Metres) -> Metres:
    """Far edge of a thing from its near edge and its size.

    >>> far_edge(edge=1.0, size=0.5)
    1.5
    """
    return edge + size


@equation("geometry", uncited=True)
def near_edge(middle: Metres, size: Metres) -> Metres:
    """Near edge of a thing from its middle and its size.

    >>> near_edge(middle=1.25, size=0.5)
    1.0
    """
    return middle - size / 2


@equation("geometry", uncited=True)
def inside(outside: Metres, wall: Metres) -> Metres:
    """Inside size between two walls of one thickness.

    >>> inside(outside=2.0, wall=0.05)
    1.9
    """
    return outside - 2 * wall


@equation("geometry", uncited=True)
def curb_middle(*, room: Metres, gap: Metres, size: Metres) -> Metres:
    """Middle of a thing against the curb-side wall, off the centre line towards the curb.

    ``room`` is the inside width, ``gap`` the space behind the thing.

    >>> curb_middle(room=2.0, gap=0.0, size=0.5)
    0.75
    """
    return room / 2 - gap - size / 2


@equation("geometry", uncited=True)
def street_middle(*, room: Metres, gap: Metres, size: Metres) -> Metres:
    """Middle of a thing against the street-side wall, off the centre line towards the curb (so negative).

    >>> street_middle(room=2.0, gap=0.0, size=0.5)
    -0.75
    """
    return gap + size / 2 - room / 2


@equation("geometry", uncited=True)
def front_wall_edge(*, wall_back: Metres, wall: Metres, gap: Metres) -> Metres:
    """Front edge of a thing against the front wall, behind the front of the deck.

    >>> front_wall_edge(wall_back=0.0, wall=0.05, gap=0.0)
    0.05
    """
    return wall_back + wall + gap


@equation("geometry", uncited=True)
def rest(whole: Metres, part: Metres) -> Metres:
    """What is left of a length when a part of it is taken.

    >>> rest(whole=3.0, part=0.5)
    2.5
    """
    return whole - part


@equation("geometry", uncited=True)
def curb_edge(middle: Metres, size: Metres) -> Metres:
    """Curb-side edge of a thing from its middle and its size across.

    >>> curb_edge(middle=0.75, size=0.5)
    1.0
    """
    return middle + size / 2


@equation("geometry", uncited=True)
def against_rear(*, rear: Metres, gap: Metres, size: Metres) -> Metres:
    """Front edge of a thing against the inside face of the rear wall.

    >>> against_rear(rear=2.95, gap=0.0, size=0.5)
    2.45
    """
    return rear - gap - size


@equation("geometry", uncited=True)
def rear_wall_edge(*, wall_back: Metres, room: Metres, wall: Metres, gap: Metres, size: Metres) -> Metres:
    """Front edge of a thing against the rear wall, behind the front of the deck.

    ``room`` is the outside length from the front wall at ``wall_back``.

    >>> rear_wall_edge(wall_back=0.0, room=3.0, wall=0.05, gap=0.0, size=0.5)
    2.45
    """
    return wall_back + room - wall - gap - size


@equation("geometry", uncited=True)
def from_ball(ball_to_deck: Metres, back: Metres) -> Metres:
    """Station behind the ball of a point given from the front of the deck.

    >>> from_ball(ball_to_deck=1.2, back=0.3)
    1.5
    """
    return ball_to_deck + back


@equation("geometry", uncited=True)
def above_road(deck_height: Metres, above: Metres) -> Metres:
    """Height above the road of a point given above the deck.

    >>> above_road(deck_height=0.6, above=0.9)
    1.5
    """
    return deck_height + above


@equation("geometry", uncited=True)
def gap(near: Metres, far: Metres) -> Metres:
    """Gap from one edge to the next edge beyond it; negative where the two things overlap.

    >>> gap(near=1.25, far=1.5)
    0.25
    """
    return far - near


@equation("geometry", uncited=True)
def ahead(distance: Metres) -> Metres:
    """Position of a point ahead of the front of the deck, so negative.

    >>> ahead(distance=1.2)
    -1.2
    """
    return -distance


@equation("geometry", uncited=True)
def corner_gap(one_way: Metres, other_way: Metres) -> Metres:
    """Distance between the nearest corners of two things that stand apart both ways.

    >>> corner_gap(one_way=0.3, other_way=0.4)
    0.5
    """
    return (one_way**2 + other_way**2) ** 0.5


@equation("geometry", uncited=True)
def corner_gap_in_space(*, along: Metres, across: Metres, up: Metres) -> Metres:
    """Distance between the nearest corners of two things that stand apart in all three directions.

    >>> corner_gap_in_space(along=0.2, across=0.3, up=0.6)
    0.7
    """
    return (along**2 + across**2 + up**2) ** 0.5


@equation("geometry", uncited=True)
def curb_face(width: Metres) -> Metres:
    """Face of the curb side off the centre line, towards the curb.

    >>> curb_face(width=2.0)
    1.0
    """
    return width / 2


@equation("geometry", uncited=True)
def street_face(width: Metres) -> Metres:
    """Face of the street side off the centre line towards the curb, so negative.

    >>> street_face(width=2.0)
    -1.0
    """
    return -width / 2


@equation("geometry", uncited=True)
def spare(clear: Metres, asked: Metres) -> Metres:
    """What is left over of a clear length when what is asked of it is taken; negative where it falls short.

    >>> spare(clear=0.75, asked=0.5)
    0.25
    """
    return clear - asked


@equation("geometry", uncited=True)
def leg(start: Metres, end: Metres) -> Metres:
    """Length of one leg of a way, whichever direction it is walked.

    >>> leg(start=2.5, end=1.0)
    1.5
    """
    return abs(end - start)


@equation("geometry", uncited=True)
def way(along: Metres, across: Metres) -> Metres:
    """Length of a way that goes along the cart and then across it: the longest that two points can need.

    >>> way(along=1.5, across=0.5)
    2.0
    """
    return along + across


@equation("geometry", uncited=True)
def hand_over(*, counter: Metres, wall: Metres, shelf: Metres) -> Metres:
    """Reach from the edge of a counter over it and through the wall to the middle of a shelf outside.

    ``counter`` is the distance from that edge to the inside face of the wall.

    >>> hand_over(counter=0.5, wall=0.05, shelf=0.3)
    0.7
    """
    return counter + wall + shelf / 2


@equation("gravity-drains")
def drain_outlet(*, rim: Metres, bowl: Metres, strainer: Metres, tailpiece: Metres, trap: Metres) -> Metres:
    """Height at which a sink's waste leaves its trap.

    All heights are above one level, such as the deck.

    >>> drain_outlet(rim=0.9, bowl=0.25, strainer=0.05, tailpiece=0.1, trap=0.1)
    0.4
    """
    return rim - bowl - strainer - tailpiece - trap


@equation("gravity-drains")
def fall_needed(*, run: Metres, drop: Metres, per: Metres) -> Metres:
    """Fall of a drain over its run at a slope given as a drop in a length.

    >>> fall_needed(run=2.0, drop=0.02, per=1.0)
    0.04
    """
    return run * drop / per


@equation("gravity-drains")
def highest_inlet(outlet: Metres, fall: Metres) -> Metres:
    """Highest tank inlet that a drain can still run down to.

    >>> highest_inlet(outlet=0.4, fall=0.04)
    0.36
    """
    return outlet - fall


@equation("geometry", uncited=True)
def deck_needed(*, deck: Metres, row: Metres, room: Metres) -> Metres:
    """Length of deck on which a row fits that now has ``room`` along its wall.

    >>> deck_needed(deck=3.0, row=3.2, room=2.9)
    3.3
    """
    return deck + row - room
