// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Every job without a window: the words of the command line, for people by default and for machines with {@code --json}.
 *
 * <pre>{@code
 * int exitCode = Ohmstead.run(new String[] {"log", "list", "kestrel.ohmstead"}, System.out, System.err);
 * }</pre>
 */
package org.ohmstead.cli;
