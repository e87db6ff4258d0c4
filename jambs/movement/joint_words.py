"""What a joint takes and what to do where it does not, as people read it."""

from __future__ import annotations

from jambs.length import HALF_64TH, ROUND_OFF, Units, whole_up
from jambs.movement.joints import SEALANT_CLASSES, JointKind, JointMovement


def joint_name(joint: JointMovement) -> str:
    """Name a joint: ``sealant joint``, ``interior casing reveal``."""
    return f"{joint.where.value} {joint.kind.value}" if joint.where else joint.kind.value


def joint_words(joint: JointMovement, units: Units) -> str:
    """Say what a joint has to take, and what to do where it does not."""
    return {
        JointKind.JAMB_UNDER_CASING: _jamb,
        JointKind.CASING_REVEAL: _reveal,
        JointKind.CASING_MITER: _miter,
        JointKind.SEALANT: _sealant,
        JointKind.STOOL: _stool,
    }[joint.kind](joint, units)


def _jamb(joint: JointMovement, units: Units) -> str:
    back, proud = units.text(joint.change), units.text(joint.size)
    if joint.takes_it:
        return f"the jamb draws back by {back} and is {proud} proud: the casing still bears"
    return (
        f"the jamb draws back by {back} and is only {proud} proud: let the boards come "
        f"to rest in the house before they are milled, or write proud: {units.text(joint.wanted)} in the job"
    )


def _reveal(joint: JointMovement, units: Units) -> str:
    grows = f"grows {units.text(joint.change)}" if joint.change > HALF_64TH else "hardly grows"
    left = f"the casing {grows} into a reveal of {units.text(joint.size)}"
    return (
        f"{left}, and half of it or more stays"
        if joint.takes_it
        else f"{left}: make the reveal {units.text(joint.wanted)}"
    )


def _miter(joint: JointMovement, units: Units) -> str:
    words = f"miters open by up to {units.text(joint.change)} at one end"
    if joint.takes_it:
        return words
    return f"{words}: glue and spline them, take quarter-sawn casing, or butt the head"


def _sealant(joint: JointMovement, units: Units) -> str:
    share = 100 * joint.change / joint.size
    size, change = units.text(joint.size), units.text(joint.change)
    works = f"the joint of {size} moves by up to {change}, ±{whole_up(share)} %"
    if joint.takes_it:
        return f"{works}: within a sealant rated ±{joint.percent:g} %"
    wide = units.text(joint.wanted)
    rated = next((one for one in SEALANT_CLASSES if one >= share - ROUND_OFF), None)
    if rated is None:
        return f"{works}, more than any sealant is rated for: write sealant_joint: {wide} in the job"
    return f"{works}: take a sealant rated ±{rated:g} %, or make the joint {wide}"


def _stool(joint: JointMovement, units: Units) -> str:
    grows, play, gap = (units.text(one) for one in (joint.change, joint.size, joint.wanted))
    if joint.takes_it:
        return (
            f"the stool grows by up to {grows} into a play of {play} behind its horns"
            if joint.size
            else "no gap needed"
        )
    has = f"its notches leave {play}" if joint.size else "its notches are cut tight"
    return f"the stool grows by up to {grows}, and {has} to the wall: write horn_play: {gap} in the job, under shop"
