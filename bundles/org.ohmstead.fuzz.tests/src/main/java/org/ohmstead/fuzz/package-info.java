// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Readers of what others wrote, held against inputs that nobody would write. Each class with a method {@code fuzzerTestOneInput} is a
 * target: it may be given any bytes, and fails for everything but what its reader declares. The inputs that are kept are run by the
 * bundle's tests; {@link org.ohmstead.fuzz.Fuzzing} looks for further ones.
 */
package org.ohmstead.fuzz;
