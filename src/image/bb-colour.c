/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-image"

#include "bb-colour.h"

#include <lcms2.h>
#include <math.h>

/* No colour that an eye can see has a number as large, in CIELAB or in sRGB. */
#define FARTHEST 1000.0

struct _BbColour
{
  cmsContext context;
  cmsHTRANSFORM transform;
  BbColourSource source;
};

/* A grey profile takes the first of three numbers that are the same. */
#define FORMAT_FIRST_OF_THREE \
  (FLOAT_SH (1) | COLORSPACE_SH (PT_GRAY) | CHANNELS_SH (1) | EXTRA_SH (2) | BYTES_SH (0))

static cmsHPROFILE
make_target (cmsContext     context,
             BbColourTarget target)
{
  /* Little CMS takes D50 where no white point is given. */
  return target == BB_COLOUR_LAB ? cmsCreateLab4ProfileTHR (context, NULL) : cmsCreate_sRGBProfileTHR (context);
}

static cmsHTRANSFORM
make_transform (cmsContext     context,
                cmsHPROFILE    profile,
                BbColourTarget target)
{
  gboolean grey = cmsGetColorSpace (profile) == cmsSigGrayData;
  cmsHPROFILE to = make_target (context, target);
  cmsHTRANSFORM transform = cmsCreateTransformTHR (context, profile, grey ? FORMAT_FIRST_OF_THREE : TYPE_RGB_DBL, to,
                                                   target == BB_COLOUR_LAB ? TYPE_Lab_DBL : TYPE_RGB_DBL,
                                                   INTENT_RELATIVE_COLORIMETRIC,
                                                   cmsFLAGS_NOOPTIMIZE | cmsFLAGS_NOCACHE);

  cmsCloseProfile (to);

  return transform;
}

/* Of a device, for the colours that the picture has. */
static gboolean
suits (cmsHPROFILE      profile,
       const BbPngInfo *info)
{
  gboolean grey = (info->colour_type & 2) == 0;

  switch ((int) cmsGetDeviceClass (profile))
    {
    case cmsSigInputClass:
    case cmsSigDisplayClass:
    case cmsSigOutputClass:
    case cmsSigColorSpaceClass:
      return cmsGetColorSpace (profile) == (grey ? cmsSigGrayData : cmsSigRgbData);
    default:
      return FALSE;
    }
}

/* A profile may be whole and yet make no sense: every corner and middle of what it takes has to become some colour. */
static gboolean
makes_sense (cmsHTRANSFORM transform)
{
  for (guint i = 0; i < 27; i++)
    {
      const double rgb[3] = { i % 3 / 2.0, i / 3 % 3 / 2.0, i / 9 / 2.0 };
      double out[3] = { 0 };

      cmsDoTransform (transform, rgb, out, 1);
      for (guint c = 0; c < 3; c++)
        if (!(fabs (out[c]) < FARTHEST))
          return FALSE;
    }

  return TRUE;
}

static cmsHTRANSFORM
use_profile (cmsContext       context,
             const BbPngInfo *info,
             BbColourTarget   target)
{
  cmsHPROFILE profile = cmsOpenProfileFromMemTHR (context, info->profile, (cmsUInt32Number) info->profile_length);
  cmsHTRANSFORM transform = NULL;

  if (profile == NULL)
    return NULL;

  if (suits (profile, info))
    transform = make_transform (context, profile, target);
  cmsCloseProfile (profile);
  if (transform != NULL && !makes_sense (transform))
    {
      cmsDeleteTransform (transform);
      transform = NULL;
    }

  return transform;
}

static cmsHTRANSFORM
use_srgb (cmsContext     context,
          BbColourTarget target)
{
  cmsHPROFILE profile = cmsCreate_sRGBProfileTHR (context);
  cmsHTRANSFORM transform = make_transform (context, profile, target);

  cmsCloseProfile (profile);

  return transform;
}

/**
 * bb_colour_new:
 * @info: what is known of the picture; its profile is needed during this call only
 * @target: what its colours are wanted as
 *
 * Finds out how the picture's colours are meant: by its own ICC profile, else as sRGB. A profile that can't be used
 * counts as none, and bb_colour_get_source() says so.
 *
 * Returns: (transfer full): a conversion
 */
BbColour *
bb_colour_new (const BbPngInfo *info,
               BbColourTarget   target)
{
  BbColour *self = g_new0 (BbColour, 1);

  self->context = cmsCreateContext (NULL, NULL);
  self->source = BB_COLOUR_BY_PROFILE;
  if (info->profile != NULL)
    self->transform = use_profile (self->context, info, target);
  if (self->transform == NULL)
    {
      gboolean fallback = info->profile != NULL || info->profile_bad;

      self->source = fallback ? BB_COLOUR_BY_FALLBACK : info->has_srgb ? BB_COLOUR_BY_SRGB : BB_COLOUR_BY_DEFAULT;
      self->transform = use_srgb (self->context, target);
    }

  return self;
}

/**
 * bb_colour_free:
 * @self: (nullable): a conversion
 */
void
bb_colour_free (BbColour *self)
{
  if (self == NULL)
    return;

  cmsDeleteTransform (self->transform);
  cmsDeleteContext (self->context);
  g_free (self);
}

/**
 * bb_colour_get_source:
 * @self: a conversion
 *
 * Returns: how the picture's colours are understood
 */
BbColourSource
bb_colour_get_source (const BbColour *self)
{
  return self->source;
}

/**
 * bb_colour_convert:
 * @self: a conversion
 * @rgb: (array): red, green and blue of each pixel, from 0 to 1; all three the same for grey
 * @out: (out caller-allocates) (array): three numbers for each pixel
 * @n_pixels: how many
 *
 * Converts colours. The same conversion may be used by several threads at a time.
 */
void
bb_colour_convert (const BbColour *self,
                   const double   *rgb,
                   double         *out,
                   gsize           n_pixels)
{
  cmsDoTransform (self->transform, rgb, out, (cmsUInt32Number) n_pixels);
}
