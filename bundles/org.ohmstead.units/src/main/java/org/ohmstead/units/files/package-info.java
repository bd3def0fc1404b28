// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/** Files that are there whole or not at all, whatever happens while they are written. */
package org.ohmstead.units.files;
