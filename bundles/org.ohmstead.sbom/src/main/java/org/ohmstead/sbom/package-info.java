// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/** Lists what a built product consists of, for programs that look for known vulnerabilities and licences. Not in the product. */
package org.ohmstead.sbom;
