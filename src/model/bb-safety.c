/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-safety.h"

#include <glib/gi18n-lib.h>

/* Common practice, no source: nothing here is a limit or a measured value. */
static const BbSafetyNote notes[] = {
  {
    BB_STATION_PRETREAT, BB_SAFETY_CHEMICAL, N_("Mixing and pouring pretreat"),
    N_("Gloves and eye protection when mixing; know where the eyewash is."),
    N_("Pretreats are solutions of salts, acids or polymers that can irritate skin and damage eyes. Wear the gloves "
       "and eye protection that section 8 of the supplier's safety data sheet names. Pour concentrate into water, "
       "label the container with product, dilution and date, and never into a drinks bottle. After a splash in the "
       "eye rinse with water for several minutes and get medical advice; take the data sheet along."),
  },
  {
    BB_STATION_PRETREAT, BB_SAFETY_CHEMICAL, N_("Spraying pretreat"),
    N_("Extraction on, lid closed: do not breathe the mist. Wipe overspray off the floor."),
    N_("Spraying makes a mist that must not be breathed. Use a closed, extracted machine or booth; where a gun is "
       "used in the open, the data sheet and a competent person decide on breathing protection. Overspray makes "
       "floors slippery and corrodes metal: wipe it up wet, at once, and let nobody walk through it."),
  },
  {
    BB_STATION_DRY, BB_SAFETY_HEAT, N_("Pressing a wet garment"),
    N_("Hot platen, and steam when it opens: hands and face away."),
    N_("A platen burns at a touch and stays hot long after it is switched off. Steam escapes when the press opens: "
       "open it slowly, stand to the side, keep hands and face away. Vapours of drying pretreat need extraction. "
       "Know the emergency stop. Nobody reaches in to straighten a sheet while the press moves."),
  },
  {
    BB_STATION_PRINT, BB_SAFETY_MACHINE, N_("At the printer"),
    N_("Keep hands, hair and drawstrings clear of the moving carriage and platen."),
    N_("Carriage and platen move without warning. Guards stay shut; drawstrings, lanyards and long hair stay away. "
       "Agitate white ink by the machine's manual, not with tools in the tank. Ink and cleaning fluid: gloves and "
       "eye protection as their data sheets say; waste ink is not for the drain unless local rules allow it."),
  },
  {
    BB_STATION_CURE, BB_SAFETY_HEAT, N_("Curing"),
    N_("Extraction on while curing; hot garments and belts burn. Watch for scorching."),
    N_("Curing drives off water and small amounts of other substances: keep the extraction running and the room "
       "aired. Garments, buttons and zips come out hot. Fabrics scorch, and synthetic fibres soften: stay within "
       "what the garment's maker allows, and never leave a press closed unattended. Dyes in polyester can turn to "
       "vapour and stain the print and what lies beside it."),
  },
  {
    BB_STATION_PROOF, BB_SAFETY_CHEMICAL, N_("Wash testing"),
    N_("Detergents irritate eyes; the wash liquor may be hot."),
    N_("Standard detergents and bleaches are concentrated: gloves and eye protection when weighing them out, no "
       "mixing of bleach with acids. Open a washing machine only when it has drained."),
  },
};

/*
 * After the precautionary statements P305+P351+P338, P302+P352, P304+P340 and P301+P330+P331 of Regulation (EC)
 * No 1272/2008, Annex IV. Burns: European Resuscitation Council Guidelines 2021, First aid: cool for 20 minutes;
 * from memory.
 */
static const BbFirstAid first_aid[] = {
  { N_("In the eyes"), N_("Rinse with water for several minutes. Take contact lenses out if that is easy, and go on "
                          "rinsing. Get medical advice.") },
  { N_("On the skin"), N_("Take off what is wet and wash with plenty of water.") },
  { N_("Breathed in"), N_("Go into fresh air and rest. Get medical advice if breathing is hard.") },
  { N_("Swallowed"), N_("Rinse the mouth. Do not make the person vomit. Call the poison centre or a doctor.") },
  { N_("Burned by heat"), N_("Cool at once with cool running water for 20 minutes. Get help for anything larger than a "
                             "coin, and for any burn of the face or hands.") },
};

/**
 * bb_safety_first_aid:
 * @n_items: (out): how many there are
 *
 * Returns: (transfer none) (array length=n_items): what to do when something has happened
 */
const BbFirstAid *
bb_safety_first_aid (guint *n_items)
{
  *n_items = G_N_ELEMENTS (first_aid);

  return first_aid;
}

/**
 * bb_safety_kind_title:
 * @kind: what a note warns of
 *
 * Returns: (transfer none): the word for it, translated
 */
const char *
bb_safety_kind_title (BbSafetyKind kind)
{
  switch (kind)
    {
    case BB_SAFETY_HEAT:
      return _("Heat");
    case BB_SAFETY_MACHINE:
      return _("Machine");
    case BB_SAFETY_CHEMICAL:
    default:
      return _("Chemical");
    }
}

/**
 * bb_safety_notes:
 * @n_notes: (out): how many there are
 *
 * Returns: (transfer none) (array length=n_notes): every note, in the order of the chain
 */
const BbSafetyNote *
bb_safety_notes (guint *n_notes)
{
  *n_notes = G_N_ELEMENTS (notes);

  return notes;
}

/**
 * bb_safety_find:
 * @station: a step
 * @nth: which of the step's notes, from 0
 *
 * Returns: (transfer none) (nullable): the note, or %NULL if the step has no more
 */
const BbSafetyNote *
bb_safety_find (BbStation station,
                guint     nth)
{
  for (guint i = 0; i < G_N_ELEMENTS (notes); i++)
    if (notes[i].station == station && nth-- == 0)
      return &notes[i];

  return NULL;
}

/**
 * bb_safety_disclaimer:
 *
 * Returns: (transfer none): what has to stand wherever a note stands, translated
 */
const char *
bb_safety_disclaimer (void)
{
  return _("The supplier's safety data sheet, the machine's manual and local rules come first. These notes and all "
           "numbers here are aids for trained people.");
}
